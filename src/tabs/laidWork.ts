/**
 * Finished work: pieces a person has ticked. A room with ticks is not planned again, and its list is not replaced by
 * another, unless the person says so. Every filling asks here.
 */
import { plural } from '../takeoff/text/plural';
import { CUT_LIST_MARK, cutListBlock, cutListMark } from './cutList';
import { listedPieces } from './keptMarks';
import { NO_LONGER_HOLDS } from './oldTab';
import { type FreshFloor, isReplaced, marksFrom } from './planMark';
import type { TabStore } from './tabStore';

/** A cut list with ticks that would be another after filling. */
export interface TickedList {
  /** Name of the tab, and its mark. */
  readonly tab: string;
  readonly mark: string;
  /** Pieces ticked, in the list for laying or in that for the saw. */
  readonly tickedCount: number;
  /** Of those, pieces that would disappear or change size. */
  readonly changedCount: number;
  /** Whether it would be given up: the floor is planned as part of another, or a room it shares planks with is. */
  readonly isGivenUp: boolean;
}

/** Asks the person; true fills all the same. */
export type MayReplan = (lists: readonly TickedList[]) => Promise<boolean>;

/** What is done where nobody can be asked. */
export const leaveTicked: MayReplan = async () => false;

/** The lists with ticks that filling these floors would change. */
export async function ticksAtStake(store: TabStore, fresh: readonly FreshFloor[]): Promise<readonly TickedList[]> {
  const found: TickedList[] = [];
  for (const { mark, tab, about } of await store.tabs()) {
    if (!mark.startsWith(CUT_LIST_MARK)) continue;
    const floor = fresh.find(({ takeoff }) => cutListMark(takeoff.entry.name) === mark);
    const [old] = marksFrom(about);
    // A list that was given another name goes by a plan with the old one: its pieces tell.
    const isOther = floor !== undefined && floor.mark.pieces !== old?.pieces;
    const isChanged = isOther || (old !== undefined && isReplaced(old, fresh) !== null);
    if (!isChanged) continue;
    const { cells } = await store.read(mark, tab);
    if (!floor && NO_LONGER_HOLDS.test(String(cells[0]?.[0] ?? ''))) continue;
    // A length typed under Cut at is a piece that is cut, whether it lies or not.
    const ticked = listedPieces(cells).filter((piece) => piece.ticked || piece.cutAt !== '');
    if (ticked.length === 0) continue;
    const kept = new Set(floor ? freshKeys(floor) : []);
    const labels = (pieces: typeof ticked) => new Set(pieces.map(({ label }) => label)).size;
    found.push({
      tab,
      mark,
      tickedCount: labels(ticked),
      changedCount: labels(ticked.filter(({ key }) => !kept.has(key))),
      isGivenUp: !floor,
    });
  }
  return found;
}

/** The keys of the pieces as the new list will show them. */
function freshKeys({ takeoff }: FreshFloor): readonly string[] {
  const cells = cutListBlock(takeoff).cells.map((row) => row.map(({ value }) => ('text' in value ? value.text : '')));
  return listedPieces(cells).map(({ key }) => key);
}

/** What is at stake, in words for the question. */
export function stakeWords(lists: readonly TickedList[]): string {
  return [...lists.map(stakeOf), 'A list that is planned again is kept as it was, and can be brought back.'].join(' ');
}

function stakeOf({ tab, tickedCount, changedCount, isGivenUp }: TickedList): string {
  const ticked = `${tab}: ${plural(tickedCount, 'piece is', 'pieces are')} ticked.`;
  if (isGivenUp) return `${ticked} This list would no longer hold.`;
  if (changedCount === 0) return `${ticked} Those stay as they are, but the rest is planned again.`;
  return `${ticked} Of those, ${changedCount} would disappear or change size.`;
}
