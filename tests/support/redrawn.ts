/**
 * A piece drawn again from nothing but its printed length, its printed marks and the width of its plank, as the person
 * at the saw reads them. Regions are added and taken away by Clipper2, so that no line of our own geometry takes part.
 */
import { difference, EndType, FillRule, inflatePaths, JoinType, type Path64, type Paths64 } from 'clipper2-ts';
import { type Ticks, ticksOfInches, ticksOfMm } from '../../src/geometry/length';
import type { Point } from '../../src/geometry/point';
import type { Region } from '../../src/geometry/polygon';

export interface Printed {
  /** As printed, to the long point. */
  readonly length: string;
  readonly marks: readonly string[];
  readonly plankWidth: Ticks;
}

/** Of the plank: x from the left end, y from the start edge. */
interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** The piece, x from its left end and y from the start edge of its plank. @throws Error for a mark that says nothing */
export function redrawn({ length, marks, plankWidth }: Printed): Region {
  const plank = { x0: 0, x1: lengthOf(length), y0: 0, y1: plankWidth };
  const box = marks.reduce(ripped, plank);
  const slanted = marks.flatMap((mark) => slantCut(mark, box));
  const envelope = less([corners(box)], slanted);
  return less(
    envelope,
    marks.flatMap((mark) => notchCut(mark, box, envelope)),
  );
}

/** What is in one of the two only and thicker than a width. */
export function unlikeParts(a: Region, b: Region, thicker: Ticks): Region {
  return [...less(a, b), ...less(b, a)].length === 0
    ? []
    : [...thick(less(a, b), thicker), ...thick(less(b, a), thicker)];
}

function thick(region: Region, width: Ticks): Region {
  return inflatePaths(region as Paths64, -width / 2, JoinType.Miter, EndType.Polygon);
}

function less(a: Region, b: Region): Region {
  return b.length === 0 ? a : difference(whole(a), whole(b), FillRule.NonZero);
}

function whole(region: Region): Paths64 {
  return region.map((outline): Path64 => outline.map(({ x, y }) => ({ x: Math.round(x), y: Math.round(y) })));
}

function corners({ x0, x1, y0, y1 }: Box): Point[] {
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}

/** `12 1/2"`, `3/4"` or `30 mm`, in ticks. */
function lengthOf(text: string): Ticks {
  const read = /^(?:(\d+) mm|(?:(\d+)"|(?:(\d+) )?(\d+)\/(\d+)"))$/.exec(text);
  if (!read) throw new Error(`"${text}" is no length`);
  const [, mm, inches, whole, parts, of] = read;
  if (mm) return ticksOfMm(Number(mm));
  return ticksOfInches(inches ? Number(inches) : Number(whole ?? 0) + Number(parts) / Number(of));
}

const LENGTH = '((?:\\d+ mm)|(?:[\\d/ ]+"))';
const END = '(left|right)';
const EDGE = '(start|far)';

function match(mark: string, pattern: string): readonly string[] | null {
  return new RegExp(`^${pattern}$`).exec(mark);
}

const RIP = `Rip to ${LENGTH} wide: ${LENGTH} off the ${EDGE} edge \\((?:tongue|groove)\\)(?:, ${LENGTH} off the far edge \\((?:tongue|groove)\\))?\\.`;
const TAPER_TO = `Rip to a taper along the ${EDGE} edge: ${LENGTH} wide at the left end, ${LENGTH} at the right\\.`;

/** The rectangle after a rip. What is told to be left must be what is left. */
function ripped(box: Box, mark: string): Box {
  const rip = match(mark, RIP);
  if (rip) {
    const [, wide, off, edge, far] = rip;
    const cut = edge === 'start' ? { ...box, y0: box.y0 + lengthOf(off) } : { ...box, y1: box.y1 - lengthOf(off) };
    const both = far ? { ...cut, y1: cut.y1 - lengthOf(far) } : cut;
    // Three numbers, each rounded by half a sixteenth at most.
    if (Math.abs(both.y1 - both.y0 - lengthOf(wide)) > ticksOfInches(1 / 8))
      throw new Error(`${mark} of ${box.y1 - box.y0}`);
    return both;
  }
  const taper = match(mark, TAPER_TO);
  if (!taper) return box;
  const width = Math.max(lengthOf(taper[2]), lengthOf(taper[3]));
  return taper[1] === 'far' ? { ...box, y1: box.y0 + width } : { ...box, y0: box.y1 - width };
}

function triangle(box: Box, end: string, edge: string, along: number, across: number): Point[] {
  const [x, y] = [end === 'left' ? box.x0 : box.x1, edge === 'start' ? box.y0 : box.y1];
  const [inX, inY] = [end === 'left' ? 1 : -1, edge === 'start' ? 1 : -1];
  const cut = [
    { x, y },
    { x: x + inX * along, y },
    { x, y: y + inY * across },
  ];
  return inX * inY > 0 ? cut : cut.reverse();
}

const SCRIBE = `Scribe the ${EDGE} edge: (.*)\\.`;
const SCRIBE_END = `Scribe the ${END} end: (.*)\\.`;

/** Ticks beyond the plank: what is to be cut off is all that is there. */
const BEYOND = 1e6;

/** What lies beyond an edge by its widths, or beyond an end by its lengths: measured from the other side. */
function scribeCut(mark: string, box: Box): Region {
  const edge = match(mark, SCRIBE);
  const end = match(mark, SCRIBE_END);
  if (!edge && !end) throw new Error(mark);
  const [, side, list] = edge ?? end ?? [];
  const [low, high, from, to] = edge
    ? (['the left end', 'the right end', box.x0, box.x1] as const)
    : (['the start edge', 'the far edge', box.y0, box.y1] as const);
  const places = list.split(', ').map((one) => {
    const [, size, at] = match(one, `${LENGTH}(?: wide| long)? at (.*)`) ?? [];
    const along = at === low ? from : at === high ? to : from + lengthOf(at ?? '');
    return { along, size: lengthOf(size ?? '') };
  });
  const point = (along: number, across: number) => (edge ? { x: along, y: across } : { x: across, y: along });
  const isFromHigh = side === 'start' || side === 'left';
  const [base, limit] = edge ? [box.y0, box.y1] : [box.x0, box.x1];
  const beyond = isFromHigh ? base - BEYOND : limit + BEYOND;
  const [first, last] = [places[0], places[places.length - 1]];
  const off = [
    point(first.along, beyond),
    point(last.along, beyond),
    ...[...places].reverse().map(({ along, size }) => point(along, isFromHigh ? limit - size : base + size)),
  ];
  // Anticlockwise, whichever side it is.
  return [side === 'start' || side === 'right' ? off : off.reverse()];
}

function slantCut(mark: string, box: Box): Region {
  if (mark.startsWith('Scribe')) return scribeCut(mark, box);
  const [length, width] = [box.x1 - box.x0, box.y1 - box.y0];
  const taper = match(mark, TAPER_TO);
  if (taper) {
    const [, edge, left, right] = taper;
    const end = lengthOf(left) < lengthOf(right) ? 'left' : 'right';
    return [triangle(box, end, edge, length, Math.abs(lengthOf(left) - lengthOf(right)))];
  }
  const off = match(mark, `Rip a taper off the ${EDGE} edge: ${LENGTH} off at the ${END} end, nothing at the other\\.`);
  if (off) return [triangle(box, off[3], off[1], length, lengthOf(off[2]))];
  const corner = match(mark, `Cut off the ${END} corner at the ${EDGE} edge: ${LENGTH} along, ${LENGTH} across\\.`);
  if (corner) return [triangle(box, corner[1], corner[2], lengthOf(corner[3]), lengthOf(corner[4]))];
  const angled = match(
    mark,
    `Angle the ${END} end, [\\d.]+° off square: the longer edge \\(long point\\) is the ${EDGE} edge, the ${EDGE} edge is ${LENGTH} shorter\\.`,
  );
  return angled ? [triangle(box, angled[1], angled[3], lengthOf(angled[4]), width)] : [];
}

function notchCut(mark: string, box: Box, envelope: Region): Region {
  if (/^(Rip|Cut off|Angle|Mark every|Scribe)/.test(mark)) return [];
  if (/join these corners/.test(mark)) return [listedCorners(mark, box)];
  if (/^Round/.test(mark)) return [roundCut(mark, box)];
  return [corners(squareCut(mark, box, envelope))];
}

function listedCorners(mark: string, box: Box): Point[] {
  const places = [...mark.matchAll(new RegExp(`\\d+: ${LENGTH}, ${LENGTH}`, 'g'))];
  if (places.length < 3) throw new Error(mark);
  return places.map(([, x, y]) => ({ x: box.x0 + lengthOf(x), y: box.y0 + lengthOf(y) }));
}

function roundCut(mark: string, box: Box): Point[] {
  const [, kind, diameter, fromEnd, isBeyondEnd, end, fromEdge, isBeyondEdge, edge] =
    match(
      mark,
      `Round (hole|notch in the (?:start edge|far edge|left end|right end)), ${LENGTH} across: cent(?:er|re) ${LENGTH} (?:from|(beyond)) the ${END} end, ${LENGTH} (?:from|(beyond)) the ${EDGE} edge\\..*`,
    ) ?? [];
  if (!kind) throw new Error(mark);
  const signedEnd = isBeyondEnd ? -lengthOf(fromEnd) : lengthOf(fromEnd);
  const signedEdge = isBeyondEdge ? -lengthOf(fromEdge) : lengthOf(fromEdge);
  const x = end === 'left' ? box.x0 + signedEnd : box.x1 - signedEnd;
  const y = edge === 'start' ? box.y0 + signedEdge : box.y1 - signedEdge;
  return Array.from({ length: 64 }, (_, i) => ({
    x: x + (lengthOf(diameter) / 2) * Math.cos((Math.PI * i) / 32),
    y: y + (lengthOf(diameter) / 2) * Math.sin((Math.PI * i) / 32),
  }));
}

const SIZE = `${LENGTH} along by ${LENGTH} across`;

function squareCut(mark: string, box: Box, envelope: Region): Box {
  const hole = match(mark, `Hole ${SIZE}: ${LENGTH} from the ${END} end, ${LENGTH} from the ${EDGE} edge\\.`);
  if (hole) return placed(box, [hole[4], lengthOf(hole[3])], [hole[6], lengthOf(hole[5])], hole);
  const inEnd = match(mark, `Notch in the ${END} end, ${SIZE}: ${LENGTH} from the ${EDGE} edge\\.`);
  if (inEnd) return placed(box, [inEnd[1], 0], [inEnd[5], lengthOf(inEnd[4])], inEnd.slice(1));
  const inEdge = match(
    mark,
    `Notch in the ${EDGE} edge, ${SIZE}: (?:at|${LENGTH} from) the ${END} end(?:( of that edge))?\\.`,
  );
  if (!inEdge) throw new Error(mark);
  const [, edge, , , from, end, ofEdge] = inEdge;
  const ends = ofEdge ? endsOf(edge, box, envelope) : box;
  return placed({ ...box, x0: ends.x0, x1: ends.x1 }, [end, from ? lengthOf(from) : 0], [edge, 0], inEdge.slice(1));
}

/** @param told whole match and sizes */
function placed(
  box: Box,
  [end, fromEnd]: [string, number],
  [edge, fromEdge]: [string, number],
  told: readonly string[],
) {
  const [length, depth] = [lengthOf(told[1]), lengthOf(told[2])];
  const x0 = end === 'left' ? box.x0 + fromEnd : box.x1 - fromEnd - length;
  const y0 = edge === 'start' ? box.y0 + fromEdge : box.y1 - fromEdge - depth;
  return { x0, x1: x0 + length, y0, y1: y0 + depth };
}

/** The corners that the slanted cuts leave a long edge. */
function endsOf(edge: string, box: Box, envelope: Region): Pick<Box, 'x0' | 'x1'> {
  const level = edge === 'start' ? box.y0 : box.y1;
  const places = envelope.flat().flatMap(({ x, y }) => (Math.abs(y - level) <= 2 ? [x] : []));
  return { x0: Math.min(...places), x1: Math.max(...places) };
}
