/** Fills a tab anew: every tab is filled here, so that none can forget what a person has put in. */
import type { TabBlock } from './block';
import { type Carried, withKept } from './keptCells';
import { tabProblems } from './tabProblems';
import type { TabAsRead, TabStore, WrittenTab } from './tabStore';

/** A tab about to be filled, and what of the old one it holds already. */
export interface Refill {
  readonly block: TabBlock;
  readonly carried: Carried;
}

export const NOTHING_CARRIED: Carried = new Set();

/** How often a tab is read again because somebody else was at it. */
const MOST_TRIES = 4;

/**
 * Writes a tab anew. Whatever a person has put into the old one is in the new one too, and nothing typed in the meantime
 * is lost.
 *
 * @param refillOf the new tab from the old one; null leaves the tab as it is
 * @returns null when `refillOf` does
 * @throws Error when others keep changing it
 */
export async function rewriteTab(
  store: TabStore,
  place: { readonly mark: string; readonly title: string },
  refillOf: (old: TabAsRead) => Refill | null,
): Promise<WrittenTab | null> {
  for (let i = 0; i < MOST_TRIES; i++) {
    const old = await store.read(place.mark, place.title);
    const refill = refillOf(old);
    if (refill === null) return null;
    const { block, asideCount } = withKept(refill.block, old, refill.carried);
    const answer = await store.write(block, old.version);
    if (answer.status === 'written') return { ...answer, asideCount };
  }
  throw new Error(tabProblems.keptChanging(place.title));
}

/** Writes a tab that takes nothing over from the old one but what a person has put in. */
export async function refillTab(store: TabStore, block: TabBlock): Promise<WrittenTab> {
  const written = await rewriteTab(store, block, () => ({ block, carried: NOTHING_CARRIED }));
  if (written) return written;
  throw new Error('Internal: a tab was to be filled and was not.');
}
