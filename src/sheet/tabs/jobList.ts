/**
 * The `Job list` tab, for the person on the floor and at the saw, without a price on it: what to settle before
 * beginning, what to do on which day with a box to tick, where the heights meet, and how strips and sticks are cut.
 */
import type { BeforeState } from '../../takeoff/beforeYouBegin';
import { lengthText } from '../../takeoff/lengthText';
import type { Order } from '../../takeoff/order';
import type { StickOrder } from '../../takeoff/trimOrder';
import {
  BAND,
  type Cell,
  filledRows,
  HEADED,
  type Look,
  lookWith,
  PLAIN,
  type TabBlock,
  TITLE,
  textCell,
  tickCell,
} from './block';

export const JOB_LIST_MARK = 'job list';
export const JOB_LIST_TITLE = 'Job list';

const STATES: Readonly<Record<BeforeState, string>> = { do: '', ask: 'find out', stop: 'STOP' };

/**
 * The list for one job.
 *
 * @param ticked what of the days is done already, by its text: refilling keeps the ticks of tasks that stay the same
 */
export function jobListBlock(order: Order, ticked: ReadonlySet<string>): TabBlock {
  const rows: (readonly Cell[])[] = [[textCell(JOB_LIST_TITLE, TITLE)]];
  const section = (heading: string, lines: readonly (readonly Cell[])[]) => {
    if (lines.length === 0) return;
    rows.push([textCell('')], [textCell(heading, HEADED), textCell('', HEADED), textCell('', HEADED)], ...lines);
  };
  section(
    'Days',
    order.days.map((task, i) => [
      textCell(task.when, banded(i)),
      textCell(task.text, wrapped(i)),
      tickCell(ticked.has(task.text), { ...banded(i), align: 'center' }),
    ]),
  );
  section(
    'Before you begin',
    order.before.map((line, i) => [
      textCell(line.subject, banded(i)),
      textCell(line.text, wrapped(i)),
      textCell(STATES[line.state], { ...banded(i), bold: true, align: 'center' }),
    ]),
  );
  section(
    'Heights (the local code comes first)',
    order.fits.map((fit, i) => [
      textCell(fit.place, banded(i)),
      textCell(fit.text, wrapped(i)),
      textCell(fit.fits === false ? 'CHECK' : '', { ...banded(i), bold: true, align: 'center' }),
    ]),
  );
  for (const sticks of order.sticks) section(stickHeading(sticks, order), stickLines(sticks, order));
  for (const cover of order.covers) {
    const { units } = order.house;
    section(
      `${cover.goods.name}: ${cover.rolls} rolls of ${lengthText(cover.goods.length, units, 'room')}`,
      cover.rooms.map(({ room, plan }, i) => [
        textCell(room, banded(i)),
        textCell(`along the ${plan.direction}: ${countedLengths(plan.strips, order)}`, wrapped(i)),
        textCell('', banded(i)),
      ]),
    );
  }
  return {
    title: JOB_LIST_TITLE,
    mark: JOB_LIST_MARK,
    cells: filledRows(rows, 3),
    columnWidths: [170, 520, 70],
    rowHeight: 0,
    frozenRows: 0,
    showGridlines: false,
    landscape: false,
  };
}

/** Texts of the tasks ticked in the tab as it stands: a tick beside a text. */
export function tickedTasks(cells: readonly (readonly unknown[])[]): ReadonlySet<string> {
  return new Set(cells.filter((row) => row[2] === true && row[1] !== '').map((row) => String(row[1])));
}

function stickHeading({ name, cuts, stockLength }: StickOrder, { house }: Order): string {
  const proof = cuts.provedFewest ? 'cannot be done with fewer' : 'a plan with fewer may exist';
  return `${name}: ${cuts.stickCount} of ${lengthText(stockLength, house.units, 'room')} (${proof})`;
}

function stickLines({ cuts }: StickOrder, { house }: Order): readonly (readonly Cell[])[] {
  return cuts.sticks.map((indices, i) => {
    const pieces = indices.map((index) => {
      const { label, length, scarfed } = cuts.pieces[index];
      return `${lengthText(length, house.units, 'piece')} ${label}${scarfed ? ', scarfed' : ''}`;
    });
    return [textCell(`${i + 1}`, banded(i)), textCell(pieces.join(';  '), wrapped(i)), textCell('', banded(i))];
  });
}

/** `3 of 12' 6", 2 of 4'`. */
function countedLengths(strips: readonly number[], { house }: Order): string {
  const texts = strips.map((strip) => lengthText(strip, house.units, 'room'));
  return [...new Set(texts)].map((text) => `${texts.filter((other) => other === text).length} of ${text}`).join(', ');
}

function banded(index: number): Look {
  return index % 2 === 1 ? lookWith({ background: BAND }) : PLAIN;
}

function wrapped(index: number): Look {
  return { ...banded(index), wrap: true };
}
