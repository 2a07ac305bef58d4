/**
 * The floor to scale, as shapes on paper: x to the right, y down, lengths in pixels of the page. Data only; the page makes
 * elements of it in `drawingView.ts`.
 */
import type { Ticks } from '../../geometry/length';
import type { Point } from '../../geometry/point';
import { boundsOf, type Region, signedAreaOf } from '../../geometry/polygon';
import { unitOf } from '../../geometry/turn';
import type { DoorwayMark, FloorPiece, Takeoff } from '../../takeoff/result';
import type { Sketch } from '../form/firstLook';
import { type Measure, measuresOf } from '../form/measures';
import { type RowFault, rowFaultsOf } from '../outcome/rowFaults';
import { type LabelPlace, labelPlaceOf } from './labelPlace';
import { type CornerNumber, cornerNumbersOf, type DrawnDiagonal, diagonalsOf } from './measureMarks';
import { lineOf, type PaperPoint, type PaperSize, pairOf, pathOf, type Scale, scaleFor, type View } from './paper';
import { type DrawnRows, rowsOnPaper } from './rowMarks';
import { beyondWall, coveredBy, facePoints, isOutside, type WallNumber, wallNumbersOf } from './wallMarks';

/** A floor on paper. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly scale: Scale;
  /** Paths of the room, of what gets floor, of each cut-out. */
  readonly outline: string;
  readonly floor: string;
  readonly cutouts: readonly string[];
  /** Of what stands over the floor, with its place among the cut-outs of the form, from 0. */
  readonly covered: readonly { readonly d: string; readonly place: number }[];
  readonly doorways: readonly DrawnDoorway[];
  readonly walls: readonly DrawnWall[];
  /** Numbers of the corners, where the room was measured from corner to corner. */
  readonly cornerNumbers: readonly CornerNumber[];
  /** None unless measures are to be seen. */
  readonly diagonals: readonly DrawnDiagonal[];
  /** Numbers of the walls, with their lengths, where they have room. */
  readonly wallNumbers: readonly WallNumber[];
  /** Empty where they are too many or too small to be told apart; then there are rows alone. */
  readonly pieces: readonly DrawnPiece[];
  readonly rows: DrawnRows;
  /** What is wrong with the rows, where it is; fewer than there are where they would cover each other. */
  readonly faults: readonly DrawnFault[];
  /** Where row 1 begins and which way it is laid; null without pieces. */
  readonly start: StartMark | null;
}

/** A wall from corner to corner. */
export interface DrawnWall {
  readonly wallNumber: number;
  /** Path of its face, which may bow. */
  readonly face: string;
  readonly from: PaperPoint;
  readonly to: PaperPoint;
}

/** A doorway: its opening in the wall, and where its number stands. */
export interface DrawnDoorway extends Pick<DrawnWall, 'from' | 'to'> {
  readonly doorwayNumber: number;
  readonly floor: DoorwayMark['floor'];
  /** The opening in the wall. */
  readonly opening: string;
  readonly label: PaperPoint;
}

/** Where the wood of a piece comes from. */
export type PieceTint = 'whole' | 'cut' | 'offcut';

/** A piece with its path and its number. */
export interface DrawnPiece {
  readonly piece: FloorPiece;
  readonly path: string;
  /** Null where its number has no room. */
  readonly label: LabelPlace | null;
  readonly tint: PieceTint;
  readonly isRipped: boolean;
}

/** A place that breaks a rule. */
export interface DrawnFault extends PaperPoint {
  readonly fault: RowFault;
}

/** The wedge at the start of row 1. */
export interface StartMark {
  readonly at: PaperPoint;
  /** Degrees clockwise on paper from the right. */
  readonly turn: number;
}

/** A white line along the walls, at least so wide that it is seen: the gap itself would be under a pixel. */
export const WHITE_LINE = 1.6;
/** How thick walls are drawn. */
export const WALL = 4;
/** More pieces than this in view, or lower rows, are drawn as rows alone: our choice, from looking at them. */
const MOST_PIECES = 450;
const LOWEST_PIECE = 5;

/**
 * The room with its floor, and its pieces when they are planned.
 *
 * @param paper the most it may take up, or the part of it that is looked at
 * @param areMeasured whether the measures are to be seen, with what each is off by
 */
export function drawingOf(room: Sketch | Takeoff, paper: View, areMeasured = false): Drawing {
  const { scale, width, height } = scaleFor([room.outline, ...room.floor], paper);
  const all = 'pieces' in room ? room.pieces : [];
  const outline = [room.outline];
  const doorways = room.doorways.map((doorway) => doorwayOf(doorway, outline, scale));
  const seen = inView(all, scale, { width, height });
  const pieces = arePiecesTold(seen, scale, paper.mostPieces ?? MOST_PIECES)
    ? seen.map((piece) => pieceOf(piece, room.rowAngle, scale))
    : [];
  const bands = 'pieces' in room ? room.rows.map(({ polygon }) => polygon) : room.rows;
  const areNumbered = pieces.filter(({ label }) => label !== null).length * 2 > pieces.length;
  return {
    width,
    height,
    scale,
    outline: pathOf(outline, scale),
    floor: pathOf(room.floor, scale),
    cutouts: room.cutouts.map((cutout) => pathOf([cutout], scale)),
    covered: room.covered.map(({ cutoutNumber, outline: part }) => {
      return { d: pathOf([part], scale), place: cutoutNumber - 1 };
    }),
    doorways,
    walls: wallsOf(room, scale),
    ...numbersOf(room, doorways, scale, areMeasured),
    pieces,
    rows: rowsOnPaper(bands, scale, { arePieces: pieces.length > 0, areNumbered: pieces.length > 0 && areNumbered }),
    faults: 'pieces' in room ? faultsOf(room, scale, { width, height }) : [],
    start: startOf(all, room.rowAngle, scale),
  };
}

function wallsOf({ walls, outline }: Sketch | Takeoff, scale: Scale): readonly DrawnWall[] {
  const isAlong = signedAreaOf(walls.map(({ from }) => from)) > 0;
  return walls.map(({ wallNumber, from, to }) => ({
    wallNumber,
    from: scale.place(from),
    to: scale.place(to),
    face: lineOf([from, ...facePoints({ from, to }, outline, isAlong), to], scale),
  }));
}

/** Corners first, then walls, then diagonals: what comes later keeps clear of what stands there. */
function numbersOf(
  room: Sketch | Takeoff,
  doorways: readonly DrawnDoorway[],
  scale: Scale,
  areMeasured: boolean,
): Pick<Drawing, 'cornerNumbers' | 'wallNumbers' | 'diagonals'> {
  const { walls, units } = room;
  const outline = [room.outline];
  const measures = 'measures' in room ? room.measures : measuresOfPlan(room);
  const told = areMeasured ? measures : [];
  const corners = walls.map(({ from }) => scale.place(from));
  const isFree = (at: PaperPoint) => isOutside(at, { outline, scale });
  const cornerNumbers = measures.length > 0 ? cornerNumbersOf(corners, false, isFree) : [];
  const around = { outline, scale, units, measures: told, taken: cornerNumbers };
  const wallNumbers = wallNumbersOf(walls, doorways, around);
  const covered = [...wallNumbers.flatMap(coveredBy), ...cornerNumbers];
  return { cornerNumbers, wallNumbers, diagonals: diagonalsOf(told, corners, units, covered) };
}

/** Of a floor through several rooms none: their corners are not numbered together. */
export function measuresOfPlan({ entry, rooms, walls }: Takeoff): readonly Measure[] {
  if (rooms.length > 1) return [];
  return measuresOf(
    entry,
    walls.map(({ from }) => from),
  );
}

/** What encloses a piece: its outline, holes, and parts that a cut-out divides off. */
export function regionOf({ polygon, holes }: FloorPiece): Region {
  return [polygon, ...holes];
}

/** Whole: a plank as it comes, ripped at most. Offcut: what an earlier cut left. Cut: the first of a plank. */
export function tintOf({ keeps, offcutOf, stripOf }: FloorPiece): PieceTint {
  if (offcutOf !== '' || stripOf !== '') return 'offcut';
  return keeps === 'both ends' ? 'whole' : 'cut';
}

/** Pixels between the marks of two faults, and the most marks: past them it is told in words. */
const FAULTS_APART = 15;
const MOST_FAULTS = 40;

function faultsOf(plan: Takeoff, { place }: Scale, { width, height }: PaperSize): readonly DrawnFault[] {
  const drawn: DrawnFault[] = [];
  for (const fault of rowFaultsOf(plan)) {
    const { x, y } = place(fault.at);
    const isClear = drawn.every((other) => Math.hypot(other.x - x, other.y - y) >= FAULTS_APART);
    if (isClear && x > 0 && x < width && y > 0 && y < height) drawn.push({ x, y, fault });
  }
  return drawn.slice(0, MOST_FAULTS);
}

function inView(
  pieces: readonly FloorPiece[],
  { place }: Scale,
  { width, height }: { readonly width: number; readonly height: number },
): readonly FloorPiece[] {
  return pieces.filter(({ polygon }) => {
    const { x0, y0, x1, y1 } = boundsOf([polygon]);
    const [low, high] = [place({ x: x0, y: y0 }), place({ x: x1, y: y1 })];
    return high.x > 0 && low.x < width && low.y > 0 && high.y < height;
  });
}

function arePiecesTold(pieces: readonly FloorPiece[], { perTick }: Scale, most: number): boolean {
  if (pieces.length === 0 || pieces.length > most) return false;
  const widths = pieces.map(({ widthLeft, widthRight }) => Math.max(widthLeft, widthRight));
  return Math.max(...widths) * perTick >= LOWEST_PIECE;
}

function pieceOf(piece: FloorPiece, degrees: number, scale: Scale): DrawnPiece {
  const region = regionOf(piece);
  return {
    piece,
    path: pathOf(region, scale),
    label: labelPlaceOf(piece.label, region, degrees, scale),
    tint: tintOf(piece),
    isRipped: piece.cuts.includes('rip'),
  };
}

function doorwayOf({ doorwayNumber, from, to, floor }: DoorwayMark, outline: Region, scale: Scale): DrawnDoorway {
  const [a, b] = [scale.place(from), scale.place(to)];
  const beyond = beyondWall({ from, to }, outline);
  const depth = WALL + WHITE_LINE + 1;
  const opening = [a, beyond(a, depth), beyond(b, depth), b].map(pairOf);
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  return {
    doorwayNumber,
    floor,
    opening: `M${opening.join('L')}Z`,
    from: a,
    to: b,
    label: beyond(middle, WALL + WHITE_LINE + 8),
  };
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
