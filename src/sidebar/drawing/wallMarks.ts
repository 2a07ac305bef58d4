/** Numbers and lengths of walls on paper, outside the room along the wall they belong to. */

import { TICKS_PER_MM, toTicks, type Units } from '../../geometry/length';
import type { Point } from '../../geometry/point';
import { distanceBetween } from '../../geometry/point';
import { contains, type Region } from '../../geometry/polygon';
import type { WallMark } from '../../takeoff/result';
import { lengthText } from '../../takeoff/text/lengthText';
import { byWords, type Measure } from '../form/measures';
import { readable } from './labelPlace';
import { stepsOver } from './measureMarks';
import type { PaperPoint, Scale } from './paper';

/** A number on paper, perhaps with the length of the wall. */
export interface WallNumber extends PaperPoint {
  readonly wallNumber: number;
  /** `W1 13' 4"`, or `W1` where there is no room for more. */
  readonly words: string;
  /** Degrees clockwise on paper. */
  readonly turn: number;
  /** The measure that does not fit the others. */
  readonly isWorst: boolean;
}

/** What the marks stand around. */
export interface Surroundings {
  readonly outline: Region;
  readonly scale: Scale;
  readonly units: Units;
  /** To be told with the walls. */
  readonly measures: readonly Measure[];
  /** Places that are taken already, such as numbers of corners. */
  readonly taken: readonly PaperPoint[];
}

/** Size of the type, pixels, and the width of a letter of it, from what Chromium shows. */
const LETTER_HEIGHT = 10;
const LETTER_WIDTH = 5.9;
/** From the face of the wall to the middle of its number: wall, white line, half a letter. */
const AWAY = 13;
/** Letters, and rings of corners, are at least so far apart from middle to middle. */
const CLEAR = 12.5;
/** What a wall is longer than its number at least. */
const APART = 4;

/**
 * Beside the middle of each wall, or as near to it as doorways and other numbers leave room. None at a wall with floor on
 * both sides, such as one between two joined rooms.
 */
export function wallNumbersOf(
  walls: readonly WallMark[],
  doorways: readonly { readonly label: PaperPoint }[],
  around: Surroundings,
): readonly WallNumber[] {
  const taken = [...around.taken, ...doorways.map(({ label }) => label)];
  return walls.flatMap((wall) => {
    const found = numberOf(wall, taken, around);
    if (!found) return [];
    taken.push(...coveredBy(found));
    return [found];
  });
}

/** Places beyond the face of a wall, square to it, on paper. */
export function beyondWall(
  wall: Pick<WallMark, 'from' | 'to'>,
  outline: Region,
): (at: PaperPoint, by: number) => PaperPoint {
  const out = outwards(wall, outline);
  return (at, by) => ({ x: at.x + out.x * by, y: at.y + out.y * by });
}

function halfWidth(words: string): number {
  return (LETTER_WIDTH * words.length) / 2;
}

function numberOf(wall: WallMark, taken: readonly PaperPoint[], around: Surroundings): WallNumber | null {
  const { scale, outline } = around;
  const [a, b] = [scale.place(wall.from), scale.place(wall.to)];
  const length = distanceBetween(a, b);
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const beyond = beyondWall(wall, outline);
  const turn = readable((Math.atan2(along.y, along.x) * 180) / Math.PI);
  const measure = around.measures.find(({ what, number }) => what === 'wall' && number === wall.wallNumber);
  for (const words of wordsOf(wall, measure, around.units)) {
    const half = halfWidth(words);
    const isLong = words.includes(' ');
    if (2 * half + APART > length && isLong) continue;
    if (length < LETTER_HEIGHT) return null;
    for (const [away, part] of placesFor(wall, around)) {
      if (isLong && half > length * Math.min(part, 1 - part)) continue;
      const at = beyond({ x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part }, away);
      const ends = stepsOver(half).map((by) => ({ x: at.x + along.x * by, y: at.y + along.y * by }));
      const isFree = ends.every((end) => isClear(end, taken) && isOutside(end, around));
      if (isFree) return { ...at, wallNumber: wall.wallNumber, words, turn, isWorst: measure?.isWorst === true };
    }
  }
  return null;
}

/** How far from the wall and where along it, the best first: a wall that bows out has its number further out. */
function placesFor(wall: WallMark, { outline, scale }: Surroundings): readonly (readonly [number, number])[] {
  const beyond = beyondWall(wall, outline);
  const [a, b] = [scale.place(wall.from), scale.place(wall.to)];
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const { isInside, near } = besideWall(wall, outline);
  const most = isInside(near) && isInside(-near) ? distanceBetween(a, b) / 2 : 0;
  let bow = 0;
  while (bow < most && !isOutside(beyond(middle, LETTER_HEIGHT / 2 + 1 + bow), { outline, scale })) bow += 2;
  return [bow, 0].flatMap((by) => [0.5, 0.35, 0.65, 0.2, 0.8].map((part) => [AWAY + by, part] as const));
}

/** From the longest to the shortest: with its length, and what that is off by. */
function wordsOf({ wallNumber, from, to }: WallMark, measure: Measure | undefined, units: Units): readonly string[] {
  const number = `${measure?.isWorst ? '!' : ''}W${wallNumber}`;
  const drawn = toTicks(distanceBetween(from, to));
  const length = `${number} ${lengthText(measure?.length ?? drawn, units, 'room')}`;
  const off = measure ? byWords(measure.by, units) : '';
  return off === '' ? [length, number] : [`${length} ${off}`, `${number} ${off}`, number];
}

function isClear(at: PaperPoint, taken: readonly PaperPoint[]): boolean {
  return taken.every((other) => distanceBetween(at, other) >= CLEAR);
}

/** Places that the words cover. */
export function coveredBy({ words, turn, x, y }: WallNumber): readonly PaperPoint[] {
  const [ux, uy] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return stepsOver(halfWidth(words)).map((by) => ({ x: x + ux * by, y: y + uy * by }));
}

/** Whether a letter stands clear of the room. */
export function isOutside(
  { x, y }: PaperPoint,
  { outline, scale: { perTick, place } }: Pick<Surroundings, 'outline' | 'scale'>,
): boolean {
  const origin = place({ x: 0, y: 0 });
  const half = LETTER_HEIGHT / 2;
  const inRoom = (dx: number, dy: number): Point => ({
    x: Math.round((x + dx - origin.x) / perTick),
    y: Math.round((origin.y - y - dy) / perTick),
  });
  return [-half, half].every((dx) => [-half, half].every((dy) => !contains(outline, inRoom(dx, dy))));
}

/**
 * Corners of the outline between the ends of a wall, where it bows; none of a wall that is not found in the outline.
 *
 * @param isAlong whether walls run as the outline does: they were walked to the left
 */
export function facePoints(
  { from, to }: Pick<WallMark, 'from' | 'to'>,
  outline: Region[number],
  isAlong: boolean,
): Region[number] {
  const indexOf = ({ x, y }: Point) => outline.findIndex((corner) => corner.x === x && corner.y === y);
  const [start, end] = [indexOf(from), indexOf(to)];
  if (start < 0 || end < 0) return [];
  const count = ((isAlong ? end - start : start - end) + outline.length) % outline.length;
  const step = isAlong ? 1 : -1;
  return Array.from(
    { length: count - 1 },
    (_, i) => outline[(start + step * (i + 1) + outline.length) % outline.length],
  );
}
/** Away from the room, square to the wall, on paper. */
function outwards(wall: Pick<WallMark, 'from' | 'to'>, outline: Region): PaperPoint {
  const { left, isInside, length, near } = besideWall(wall, outline);
  // Where it bows both sides may be inside, or outside: then further off, at most half a circle.
  const probe = [near, ...[1, 2, 3, 4, 5].map((part) => (length * part) / 9)].find(
    (by) => isInside(by) !== isInside(-by),
  );
  return isInside(probe ?? near) ? { x: -left.x, y: left.y } : { x: left.x, y: -left.y };
}

/** Looks beside the middle of the line between the corners of a wall: a millimetre away, or less on the shortest walls. */
function besideWall({ from, to }: Pick<WallMark, 'from' | 'to'>, outline: Region) {
  const length = distanceBetween(from, to);
  const left = { x: (from.y - to.y) / length, y: (to.x - from.x) / length };
  const isInside = (by: number) =>
    contains(outline, {
      x: Math.round((from.x + to.x) / 2 + left.x * by),
      y: Math.round((from.y + to.y) / 2 + left.y * by),
    });
  return { length, left, isInside, near: Math.min(TICKS_PER_MM, length / 8) };
}
