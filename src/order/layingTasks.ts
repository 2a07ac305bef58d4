/** Tools and tasks that follow from how the planks are fastened and from what comes out first. */
import { distinct } from '../geometry/lists';
import { lengthText } from '../takeoff/text/lengthText';
import { nameKey } from '../takeoff/text/names';
import type { House, LaidRoom } from './house';

type Fastening = LaidRoom['terms']['fastening'];

/** Common practice, by the way of fastening. */
const TOOLS: Readonly<Record<Fastening, readonly string[]>> = {
  floating: ['tapping block, pull bar, spacers'],
  glued: [
    'spacers or wedges',
    'straps or tape to hold rows together',
    'gloves, and the remover that the adhesive names',
  ],
  nailed: ['flooring nailer and mallet', 'drill, hammer and nail set for the first and last rows'],
};

/** Tools for laying, each way of fastening once. */
export function layingTools(house: House, rooms: readonly LaidRoom[]): readonly string[] {
  const { trowel } = house.adhesive;
  const notched = `notched trowel (${trowel || 'the notch is on the pail'})`;
  const felt = rooms.some((room) => room.felt !== null) ? ['stapler and knife for the felt'] : [];
  const ways = fasteningsOf(rooms).flatMap((way) => (way === 'glued' ? [notched, ...TOOLS.glued] : TOOLS[way]));
  return [...ways, ...felt];
}

/** What is laid before the first row, and what the fastening asks of the day. */
export function layingTasks(house: House, rooms: readonly LaidRoom[]): readonly string[] {
  const spread = [
    'Spread only as much adhesive as is covered within the time on its pail, and no further than you reach without kneeling in it. Air the rooms; keep flames and sparks away if its label says so.',
  ];
  const nail = [
    'Find out where pipes, cables and floor heating run before you drive a nail.',
    'The first and last rows are nailed by hand through the face: the nailer does not reach there.',
  ];
  const tasks: Readonly<Record<Fastening, readonly string[]>> = { floating: [], glued: spread, nailed: nail };
  return [...coverTasks(house, rooms), ...fasteningsOf(rooms).flatMap((way) => tasks[way])];
}

/** Rooms whose old floor comes out. */
export function tearOutTasks({ site }: House, rooms: readonly LaidRoom[]): readonly string[] {
  const asked = site.tearOut.map(nameKey);
  const names = rooms.map((room) => room.name).filter((name) => asked.includes(nameKey(name)));
  if (names.length === 0) return [];
  return [
    `Take out the old floor: ${names.join(', ')}. First read Asbestos under Before you begin. Then measure flatness and moisture of what lay below it.`,
  ];
}

function coverTasks(house: House, rooms: readonly LaidRoom[]): readonly string[] {
  const laps = (overlap: number) =>
    overlap > 0 ? `laps of ${lengthText(overlap, house.units, 'piece')}` : 'edges butted';
  return (['film', 'underlay', 'felt'] as const).flatMap((kind) => {
    const laid = rooms.filter((room) => room[kind] !== null);
    const goods = laid[0]?.[kind];
    if (!goods) return [];
    return [
      `Lay the ${goods.name.toLowerCase()}, ${laps(goods.overlap)}: ${laid.map((room) => room.name).join(', ')}.`,
    ];
  });
}

function fasteningsOf(rooms: readonly LaidRoom[]): readonly Fastening[] {
  return distinct(rooms.map(({ terms }) => terms.fastening));
}
