/**
 * The tab `Floors laid`: what each floor has taken beside what was planned, so that the next estimate starts from one's own
 * figures.
 */

import { TICKS_PER_FOOT, TICKS_PER_METRE, type Units } from '../geometry/length';
import { sumOf } from '../geometry/lists';
import { type FloorLaid, wasteOnTop } from '../takeoff/planning/floorLaid';
import { countryWords } from '../takeoff/text/countryWords';
import { lengthText } from '../takeoff/text/lengthText';
import { sameName } from '../takeoff/text/names';
import { numberText } from '../takeoff/text/numberText';
import { plural } from '../takeoff/text/plural';
import {
  blankCell,
  type Cell,
  filledRows,
  HEADED,
  LIST,
  lookWith,
  numberCell,
  STRONG,
  type TabBlock,
  TITLE,
  textCell,
} from './block';
import { NOTHING_CARRIED, rewriteTab } from './rewriteTab';
import type { TabAsRead, TabStore, WrittenTab } from './tabStore';

const MARK = 'floors laid';
const TITLE_WORDS = 'Floors laid';
const HEADINGS = [
  'Room',
  'Floor',
  'Unit',
  'Planks planned',
  'Planks used',
  'Spoilt',
  'Waste planned',
  'Waste used',
  'Planks left',
  'Boxes to return',
  'Offcuts to keep',
] as const;
const WIDTHS = [130, 60, 50, 60, 60, 50, 66, 66, 60, 70, 240];
const WRAPPED = lookWith({ wrap: true });

/** A floor as its line has it. */
interface LaidLine {
  readonly room: string;
  readonly floor: number;
  readonly unit: string;
  readonly waste: number;
  readonly cells: readonly Cell[];
}

interface Room {
  readonly name: string;
  readonly units: Units;
}

/** Writes the line of a room, in the place of an older one, and says what is left. */
export async function fillFloorsLaid(
  store: TabStore,
  room: Room,
  laid: FloorLaid,
): Promise<{ readonly written: WrittenTab; readonly words: readonly string[] }> {
  let own = 0;
  const written = await rewriteTab(store, { mark: MARK, title: TITLE_WORDS }, (old) => {
    const others = linesIn(old).filter((line) => !sameName(line.room, room.name));
    const lines = [...others, lineOf(room, laid)];
    own = ownWaste(lines);
    return { block: block(lines, room.units), carried: NOTHING_CARRIED };
  });
  if (!written) throw new Error('Internal: a tab was to be filled and was not.');
  return { written, words: [...leftWords(room, laid), ownWords(own)] };
}

/** The waste on top of the area, of all floors that are laid; null before there is one. */
export async function ownWasteOf(store: TabStore): Promise<number | null> {
  const lines = linesIn(await store.read(MARK, TITLE_WORDS));
  return lines.length === 0 ? null : ownWaste(lines);
}

function lineOf({ name, units }: Room, laid: FloorLaid): LaidLine {
  const [size, unit] = units === 'us' ? [TICKS_PER_FOOT, 'sq ft'] : [TICKS_PER_METRE, 'm²'];
  const waste = wasteOnTop(laid.usedCount, laid);
  const count = (number: number) => numberCell(number, '0');
  return {
    room: name,
    floor: laid.floorArea / size ** 2,
    unit,
    waste,
    cells: [
      textCell(name),
      numberCell(laid.floorArea / size ** 2, '0.0'),
      textCell(unit),
      count(laid.plannedCount),
      count(laid.usedCount),
      count(laid.spoiltCount),
      numberCell(wasteOnTop(laid.plannedCount, laid), '0.0%'),
      numberCell(waste, '0.0%'),
      count(Math.max(0, laid.leftCount)),
      laid.unopenedCount === null ? textCell('box not given', WRAPPED) : count(laid.unopenedCount),
      textCell(keptWords(laid, units), WRAPPED),
    ],
  };
}

const FORMATS = ['', '0.0', '', '0', '0', '0', '0.0%', '0.0%', '0', '0', ''];

/** The lines as they stand, whatever rows were put in between. */
function linesIn({ cells }: Pick<TabAsRead, 'cells'>): readonly LaidLine[] {
  const head = cells.findIndex((row) => row.includes(HEADINGS[0]) && row.includes('Waste used'));
  if (head < 0) return [];
  // In the words of either country.
  const shown = cells[head].map((cell) => countryWords(String(cell), 'us'));
  const columns = HEADINGS.map((heading) => shown.indexOf(countryWords(heading, 'us')));
  return cells.slice(head + 1).flatMap((row): LaidLine[] => {
    const values = columns.map((column) => row[column] ?? '');
    const [room, floor, unit, , , , , waste] = values;
    if (String(room) === '' || typeof floor !== 'number' || typeof waste !== 'number') return [];
    const line = values.map((value, i) =>
      typeof value === 'number' ? numberCell(value, FORMATS[i] || '0') : textCell(String(value), WRAPPED),
    );
    return [{ room: String(room), floor, unit: String(unit), waste, cells: line }];
  });
}

function ownWaste(lines: readonly LaidLine[]): number {
  const size = ({ floor, unit }: LaidLine) => (unit === 'm²' ? floor * (TICKS_PER_METRE / TICKS_PER_FOOT) ** 2 : floor);
  const floor = sumOf(lines, (line) => size(line));
  return sumOf(lines, (line) => size(line) * line.waste) / floor;
}

function block(lines: readonly LaidLine[], units: Units): TabBlock {
  const rows = [
    [textCell(TITLE_WORDS, TITLE)],
    [textCell(ownWords(ownWaste(lines)), STRONG)],
    [textCell('Waste is put on top of the floor, as in PLANK_AREA and PLANK_BOXES.')],
    [blankCell()],
    HEADINGS.map((heading) => textCell(countryWords(heading, units), lookWith({ wrap: true }, HEADED))),
    ...lines.map(({ cells }) => cells),
  ];
  return {
    title: TITLE_WORDS,
    mark: MARK,
    cells: filledRows(rows, WIDTHS.length),
    columnWidths: WIDTHS,
    ...LIST,
  };
}

function ownWords(own: number): string {
  return `Your own waste: ${numberText(own * 100, 1)} % on top of the floor. Use it in the next estimate.`;
}

/** `61 planks used, 60 planned, 1 spoilt. 3 left: none of them a whole box. Keep ...` */
function leftWords({ units }: Room, laid: FloorLaid): readonly string[] {
  const { usedCount, plannedCount, spoiltCount, leftCount, unopenedCount } = laid;
  const returned = unopenedCount ? `, ${plural(unopenedCount, 'unopened box', 'unopened boxes')} to return` : '';
  const left =
    leftCount >= 0
      ? `${plural(leftCount, 'plank')} left${returned}.`
      : `${plural(-leftCount, 'plank')} more than were bought.`;
  const kept = keptWords(laid, units);
  return [
    `${plural(usedCount, 'plank')} used, ${plannedCount} planned, ${spoiltCount} ${countryWords('spoilt', units)}.`,
    left,
    kept === '' ? 'No offcut is long enough to be kept for repairs.' : `Keep for repairs: ${kept}.`,
  ];
}

function keptWords({ kept }: FloorLaid, units: Units): string {
  return kept.map(({ length, ends }) => `${lengthText(length, units, 'piece')}, ${ends} end`).join('; ');
}
