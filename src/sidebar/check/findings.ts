/** Tries every belief, one kind after the other. One that fails does not keep the next from being tried. */
import {
  type CellBelief,
  type CheckedSheet,
  type Finding,
  findingOf,
  type PageBelief,
  type SheetBelief,
} from './belief';
import { cellBeliefs } from './cellBeliefs';
import { cellsBlock, FIRST_FORMULA_ROW } from './checkTab';
import { COPY_BELIEFS } from './copyBeliefs';
import { TAB_BELIEFS } from './tabBeliefs';
import { groupOf } from './trial';
import { VALUE_BELIEFS } from './valueBeliefs';

export const SHEET_BELIEFS: readonly SheetBelief[] = [...VALUE_BELIEFS, ...COPY_BELIEFS, ...TAB_BELIEFS];

/** So many beliefs go to the server at once: each takes a second or two, and a run may take six minutes. */
const AT_ONCE = 6;

/** Told after every few beliefs how many have been tried. */
type OnTried = (count: number) => void;

/** Calls of the services, on tabs that are removed again. */
export async function tryOnTabs(sheet: CheckedSheet, tried: OnTried): Promise<readonly Finding[]> {
  const found: Finding[] = [];
  for (let at = 0; at < SHEET_BELIEFS.length; at += AT_ONCE) {
    const beliefs = SHEET_BELIEFS.slice(at, at + AT_ONCE);
    const answers = await sheet.tryCalls(beliefs.map(({ ask }) => groupOf(ask))).catch((error) => String(error));
    found.push(
      ...beliefs.map((belief, i) => {
        const told = typeof answers === 'string' ? { failed: answers } : answers[i];
        return findingOf(belief, 'failed' in told ? told.failed : toldOf(belief, told.answers));
      }),
    );
    tried(found.length);
  }
  return found;
}

function toldOf({ tell }: SheetBelief, answers: readonly unknown[]): string {
  try {
    return tell ? tell(answers) : answers.join(', ');
  } catch (failure) {
    return `${failure}: ${JSON.stringify(answers)}`;
  }
}

export async function tryOnPage(
  beliefs: readonly PageBelief[],
  sheet: CheckedSheet,
  tried: OnTried,
): Promise<readonly Finding[]> {
  const found: Finding[] = [];
  for (const belief of beliefs) {
    found.push(findingOf(belief, await belief.find(sheet).catch((error) => String(error))));
    tried(found.length);
  }
  return found;
}

/** Looks so often, so many milliseconds apart: the service works functions in cells out after they are written. */
const LOOKS = { most: 40, apart: 1000 };

/** Formulas, written into the tab of the check and read again. */
export async function tryInCells(sheet: CheckedSheet, tried: OnTried): Promise<readonly Finding[]> {
  const beliefs = cellBeliefs(FIRST_FORMULA_ROW + cellBeliefs(0).length);
  const block = cellsBlock(beliefs);
  await sheet.write(block, '');
  for (let look = 1; ; look++) {
    const { cells } = await sheet.read(block.mark, block.title);
    const values = beliefs.map((_, i) => cells[FIRST_FORMULA_ROW - 1 + i]?.[1] ?? '');
    if (look < LOOKS.most && values.some((value) => /^Loading/.test(String(value)))) {
      await new Promise((resolve) => setTimeout(resolve, LOOKS.apart));
      continue;
    }
    tried(beliefs.length);
    return beliefs.map((belief, i) => findingOf(belief, inWords(belief, values[i])));
  }
}

function inWords({ tell }: CellBelief, value: unknown): string {
  return tell ? tell(value) : String(value);
}
