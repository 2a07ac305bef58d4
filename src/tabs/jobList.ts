/**
 * The `Job list` tab, for the person on the floor and at the saw, without a price on it: what to settle before
 * beginning, what to do on which day with a box to tick, where the heights meet, and how strips and sticks are cut.
 */
import { distinct, isFilled } from '../geometry/lists';
import type { BeforeState } from '../order/beforeLine';
import type { DayTask } from '../order/dayList';
import type { Order } from '../order/order';
import type { StickOrder } from '../order/trimOrder';
import { countryDay } from '../takeoff/text/countryDate';
import { lengthText } from '../takeoff/text/lengthText';
import { plural } from '../takeoff/text/plural';
import {
  BAND,
  type Cell,
  filledRows,
  HEADED,
  type Look,
  lookWith,
  PAGE,
  PLAIN,
  type TabBlock,
  TITLE,
  textCell,
  tickCell,
} from './block';
import type { Carried } from './keptCells';
import { placeKey } from './oldTab';

export const JOB_LIST_MARK = 'job list';
export const JOB_LIST_TITLE = 'Job list';

const STATES: Readonly<Record<BeforeState, string>> = { do: '', ask: 'find out', stop: 'STOP' };

/** Rows of three cells under a heading; a section without rows is left out. */
interface Section {
  readonly heading: string;
  readonly rows: readonly (readonly Cell[])[];
}

/**
 * The list for one job.
 *
 * @param ticked what of the days is done already, by its text: refilling keeps the ticks of tasks that stay the same
 * @param locale of the spreadsheet, for dates
 */
export function jobListBlock(order: Order, ticked: ReadonlySet<string>, locale: string): TabBlock {
  const sections = [...settlingSections(order, ticked, locale), ...cuttingSections(order)];
  const rows = sections
    .filter((section) => section.rows.length > 0)
    .flatMap(({ heading, rows: own }) => [[], [textCell(heading, HEADED)], ...own]);
  return {
    title: JOB_LIST_TITLE,
    mark: JOB_LIST_MARK,
    cells: filledRows([[textCell(JOB_LIST_TITLE, TITLE)], ...rows], 3),
    columnWidths: [130, 458, 60],
    ...PAGE,
  };
}

/** What to do on which day, what to settle, where heights meet. */
function settlingSections(order: Order, ticked: ReadonlySet<string>, locale: string): readonly Section[] {
  const row = (first: string, text: string, mark: string, i: number) => [
    textCell(first, wrapped(i)),
    textCell(text, wrapped(i)),
    textCell(mark, { ...banded(i), bold: true, align: 'center' }),
  ];
  const days = order.days.map((task, i) => [
    textCell(whenText(task, locale), banded(i)),
    textCell(task.text, wrapped(i)),
    tickCell(ticked.has(task.text), { ...banded(i), align: 'center' }),
  ]);
  const before = order.before.map((line, i) => row(line.subject, line.text, STATES[line.state], i));
  const heights = order.fits.map((fit, i) => row(fit.place, fit.text, fit.fits === false ? 'CHECK' : '', i));
  return [
    { heading: 'Days', rows: days },
    { heading: 'Before you begin', rows: before },
    { heading: 'Heights (the local code comes first)', rows: heights },
  ];
}

/** `Sat, Dec 5, 2026`, or `2 days before` while no start date is entered. */
function whenText({ day, offset }: DayTask, locale: string): string {
  if (day !== null) return countryDay(day, locale);
  if (offset === 0) return 'first day';
  return offset === -1 ? 'day before' : `${-offset} days before`;
}

/** How sticks and rolls are cut. */
function cuttingSections(order: Order): readonly Section[] {
  const { units } = order.house;
  const sticks = order.sticks.map((stick) => ({ heading: stickHeading(stick, order), rows: stickLines(stick, order) }));
  const rolls = order.covers.map(({ goods, rolls: count, rooms }) => ({
    heading: `${goods.name}: ${plural(count, 'roll')} of ${lengthText(goods.length, units, 'room')}`,
    rows: rooms.map(({ room, plan }, i) => [
      textCell(room, wrapped(i)),
      textCell(`along the ${plan.direction}: ${countedLengths(plan.strips, order)}`, wrapped(i)),
    ]),
  }));
  return [...sticks, ...rolls];
}

/** Texts of the tasks ticked in the tab as it stands: a tick in a line whose longest text is the task. */
export function tickedTasks(cells: readonly (readonly unknown[])[]): ReadonlySet<string> {
  const ticked = cells.filter((row) => row.includes(true));
  return new Set(ticked.map(longestText).filter(isFilled));
}

function longestText(row: readonly unknown[]): string {
  const texts = row.filter((cell): cell is string => typeof cell === 'string');
  return texts.reduce((long, text) => (text.length > long.length ? text : long), '');
}

/** Where in the old tab those ticks stand whose task is in the new one too. */
export function carriedTicks(order: Order, cells: readonly (readonly unknown[])[]): Carried {
  const tasks = new Set(order.days.map((task) => task.text));
  return new Set(
    cells.flatMap((row, r) =>
      tasks.has(longestText(row)) ? row.flatMap((cell, c) => (cell === true ? [placeKey(r, c)] : [])) : [],
    ),
  );
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
    return [textCell(`${i + 1}`, banded(i)), textCell(pieces.join(';  '), wrapped(i))];
  });
}

/** `3 of 12' 6", 2 of 4'`. */
function countedLengths(strips: readonly number[], { house }: Order): string {
  const texts = strips.map((strip) => lengthText(strip, house.units, 'room'));
  return distinct(texts)
    .map((text) => `${texts.filter((other) => other === text).length} of ${text}`)
    .join(', ');
}

function banded(index: number): Look {
  return index % 2 === 1 ? lookWith({ background: BAND }) : PLAIN;
}

function wrapped(index: number): Look {
  return { ...banded(index), wrap: true };
}
