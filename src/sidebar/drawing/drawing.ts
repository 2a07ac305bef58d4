/**
 * The floor to scale, as shapes on paper: x to the right, y down, lengths in the paper's units. Data only; the page
 * makes elements of it in `drawingView.ts`.
 */
import { TICKS_PER_MM, type Ticks } from '../../geometry/length';
import type { Point } from '../../geometry/point';
import { boundsOf, contains, type Region } from '../../geometry/polygon';
import { unitOf } from '../../geometry/turn';
import type { DoorwayMark, FloorPiece, Takeoff, WallMark } from '../../takeoff/result';
import type { Sketch } from '../form/firstLook';
import { type LabelPlace, labelPlaceOf } from './labelPlace';

/** A place on paper, y down. */
export interface PaperPoint {
  readonly x: number;
  readonly y: number;
}

/** From the room to the paper. */
export interface Scale {
  /** Paper units of a tick. */
  readonly perTick: number;
  place(point: Point): PaperPoint;
}

/** A floor on paper. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly scale: Scale;
  /** Paths of the room, of what gets floor, of each cut-out. */
  readonly outline: string;
  readonly floor: string;
  readonly cutouts: readonly string[];
  readonly doorways: readonly DrawnDoorway[];
  /** Numbers of the walls, where they have room. */
  readonly wallNumbers: readonly (PaperPoint & { readonly wallNumber: number })[];
  readonly pieces: readonly DrawnPiece[];
  /** Where row 1 begins and which way it is laid; null without pieces. */
  readonly start: StartMark | null;
}

/** A doorway: its opening in the wall, and where its number stands. */
export interface DrawnDoorway {
  readonly doorwayNumber: number;
  readonly floor: DoorwayMark['floor'];
  /** The opening in the wall. */
  readonly opening: string;
  /** Along the face of the wall. */
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly label: PaperPoint;
}

/** A piece with its path and its number. */
export interface DrawnPiece {
  readonly piece: FloorPiece;
  readonly path: string;
  /** Null where its number has no room. */
  readonly label: LabelPlace | null;
  /** 0 to 3: two tints for odd rows in turn, two for even rows. */
  readonly tint: number;
}

/** The wedge at the start of row 1. */
export interface StartMark {
  readonly at: PaperPoint;
  /** Degrees clockwise on paper from the right. */
  readonly turn: number;
}

/** Paper units. */
export interface PaperSize {
  readonly width: number;
  /** The most it may be high. */
  readonly height: number;
}

/** Paper around the room: the walls, the numbers of the doorways. */
export const MARGIN = 25;
/** A white line along the walls, at least so wide that it is seen: the gap itself would be under a pixel. */
export const WHITE_LINE = 1.6;
/** How thick walls are drawn. */
export const WALL = 4;

/** The room with its floor, and its pieces when they are planned. */
export function drawingOf(room: Sketch | Takeoff, paper: PaperSize): Drawing {
  const pieces = 'pieces' in room ? room.pieces : [];
  const degrees = 'pieces' in room ? room.rowAngle : 0;
  const { scale, ...size } = scaleFor([room.outline, ...room.floor], paper);
  const doorways = room.doorways.map((doorway) => doorwayOf(doorway, [room.outline], scale));
  return {
    ...size,
    scale,
    outline: pathOf([room.outline], scale),
    floor: pathOf(room.floor, scale),
    cutouts: room.cutouts.map((cutout) => pathOf([cutout], scale)),
    doorways,
    wallNumbers: wallNumbersOf(room.walls, doorways, [room.outline], scale).map((number) => onPaper(number, paper)),
    pieces: pieces.map((piece) => pieceOf(piece, degrees, scale)),
    start: startOf(pieces, degrees, scale),
  };
}

/** The path of a region: every outline closed. */
export function pathOf(region: Region, scale: Scale): string {
  return region.map((outline) => `M${outline.map((point) => pairOf(scale.place(point))).join('L')}Z`).join('');
}

/** `x,y` to a thousandth of a unit. */
function pairOf({ x, y }: PaperPoint): string {
  return `${Math.round(x * 1000) / 1000},${Math.round(y * 1000) / 1000}`;
}

/** What encloses a piece: its outline, holes, and parts that a cut-out divides off. */
export function regionOf({ polygon, holes }: FloorPiece): Region {
  return [polygon, ...holes];
}

function scaleFor(region: Region, paper: PaperSize): { width: number; height: number; scale: Scale } {
  const { x0, y0, x1, y1 } = boundsOf(region);
  const perTick = Math.min((paper.width - 2 * MARGIN) / (x1 - x0), (paper.height - 2 * MARGIN) / (y1 - y0));
  const height = (y1 - y0) * perTick + 2 * MARGIN;
  const left = (paper.width - (x1 - x0) * perTick) / 2;
  const place = ({ x, y }: Point) => ({ x: left + (x - x0) * perTick, y: MARGIN + (y1 - y) * perTick });
  return { width: paper.width, height, scale: { perTick, place } };
}

function pieceOf(piece: FloorPiece, degrees: number, scale: Scale): DrawnPiece {
  const region = regionOf(piece);
  return {
    piece,
    path: pathOf(region, scale),
    label: labelPlaceOf(piece.label, region, degrees, scale),
    tint: 2 * ((piece.rowNumber + 1) % 2) + ((piece.pieceNumber + 1) % 2),
  };
}

function doorwayOf({ doorwayNumber, from, to, floor }: DoorwayMark, outline: Region, scale: Scale): DrawnDoorway {
  const [a, b] = [scale.place(from), scale.place(to)];
  const out = outwards(from, to, outline);
  const beyond = (p: PaperPoint, by: number) => ({ x: p.x + out.x * by, y: p.y + out.y * by });
  const depth = WALL + WHITE_LINE + 1;
  const opening = [a, beyond(a, depth), beyond(b, depth), b].map(pairOf).join('L');
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  return { doorwayNumber, floor, opening: `M${opening}Z`, from: a, to: b, label: beyond(middle, labelDistance(out)) };
}

/** How far apart on paper two numbers outside the walls must stand, and how long a wall must be to get one. */
const APART = 15;

/**
 * Outside the room beside the middle of each wall, or as near to it as doorways and other numbers leave room. None at a
 * wall with floor on both sides, such as one between two joined rooms.
 */
function wallNumbersOf(
  walls: readonly WallMark[],
  doorways: readonly DrawnDoorway[],
  outline: Region,
  scale: Scale,
): Drawing['wallNumbers'] {
  const taken = doorways.map(({ label }) => label);
  return walls.flatMap(({ wallNumber, from, to }) => {
    const [a, b] = [scale.place(from), scale.place(to)];
    if (Math.hypot(b.x - a.x, b.y - a.y) < APART) return [];
    const out = outwards(from, to, outline);
    const away = labelDistance(out);
    const places = [0.5, 0.35, 0.65, 0.2, 0.8].map((part) => ({
      x: a.x + (b.x - a.x) * part + out.x * away,
      y: a.y + (b.y - a.y) * part + out.y * away,
    }));
    const isFree = (place: PaperPoint) =>
      taken.every(({ x, y }) => Math.hypot(x - place.x, y - place.y) >= APART) && isOutside(place, outline, scale);
    const free = places.find(isFree);
    if (!free) return [];
    taken.push(free);
    return [{ ...free, wallNumber }];
  });
}

/** A number of three letters, such as W10, is wider than the paper beside the room. */
function onPaper(number: Drawing['wallNumbers'][number], { width }: PaperSize): Drawing['wallNumbers'][number] {
  const half = (LETTER_WIDTH * `W${number.wallNumber}`.length) / 2;
  return { ...number, x: Math.min(Math.max(number.x, half), width - half) };
}

/** Of a letter at the size of wall numbers, from what Chromium shows. */
const LETTER_WIDTH = 7;

/** Whether a number of two figures stands clear of the room. */
function isOutside({ x, y }: PaperPoint, outline: Region, { perTick, place }: Scale): boolean {
  const origin = place({ x: 0, y: 0 });
  const inRoom = (dx: number, dy: number): Point => ({
    x: Math.round((x + dx - origin.x) / perTick),
    y: Math.round((origin.y - y - dy) / perTick),
  });
  return [-NUMBER_WIDTH, 0, NUMBER_WIDTH].every((dx) =>
    [-NUMBER_HEIGHT, NUMBER_HEIGHT].every((dy) => !contains(outline, inRoom(dx, dy))),
  );
}

/** Half the width and height of a wall's number on paper. */
const NUMBER_WIDTH = 7;
const NUMBER_HEIGHT = 4;

/** From the face of a wall to the middle of a number beside it: figures are wider than high. */
function labelDistance(out: PaperPoint): number {
  return WALL + WHITE_LINE + 3 + 8 * Math.abs(out.x) + 4 * Math.abs(out.y);
}

/** Away from the room, square to the wall, on paper. */
function outwards(from: Point, to: Point, outline: Region): PaperPoint {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const left = { x: (from.y - to.y) / length, y: (to.x - from.x) / length };
  // Beside the middle of the wall: a millimetre, or less on the shortest walls.
  const probe = Math.min(TICKS_PER_MM, length / 8);
  const beside = {
    x: Math.round((from.x + to.x) / 2 + left.x * probe),
    y: Math.round((from.y + to.y) / 2 + left.y * probe),
  };
  return contains(outline, beside) ? { x: -left.x, y: left.y } : { x: left.x, y: -left.y };
}

/** At the start of the first piece, outside it: the lower left end as one looks away from the start wall. */
function startOf(pieces: readonly FloorPiece[], degrees: number, scale: Scale): StartMark | null {
  if (pieces.length === 0) return null;
  const { cosine, sine } = unitOf(degrees);
  const along = ({ x, y }: Point): Ticks => x * cosine + y * sine;
  const across = ({ x, y }: Point): Ticks => y * cosine - x * sine;
  const { polygon } = pieces[0];
  const left = Math.min(...polygon.map(along));
  const [low, high] = [Math.min(...polygon.map(across)), Math.max(...polygon.map(across))];
  const middle = (low + high) / 2;
  const at = scale.place({ x: left * cosine - middle * sine, y: left * sine + middle * cosine });
  const back = WALL + WHITE_LINE + 2;
  return { at: { x: at.x - back * cosine, y: at.y + back * sine }, turn: -degrees };
}
