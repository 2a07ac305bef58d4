/**
 * What a takeoff answers: plain JSON, everything the tabs, the drawing and the custom functions show. Lengths are
 * ticks, points are in room coordinates (see `geometry/point.ts`), numbers a person sees count from 1.
 */
import type { CutPlan } from '../cutting/job';
import type { Ticks, Units } from '../geometry/length';
import type { Point } from '../geometry/point';
import type { LongEdge } from '../layout/rules';
import type { Room } from '../room/outline';
import type { RoomEntry } from './entry';

/** An entry that cannot be: one sentence, at the field it is about (`shape.walls.3.length`, `product.plankLength`). */
export interface Problem {
  readonly field: string;
  readonly text: string;
}

export type TakeoffResult =
  | { readonly status: 'planned'; readonly takeoff: Takeoff }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

export interface Takeoff {
  readonly entry: RoomEntry;
  /** Names of the rooms it is laid through: one, or those of all that are joined. */
  readonly rooms: readonly string[];
  readonly units: Units;
  readonly plankLength: Ticks;
  /** The step to which its cuts are marked. */
  readonly markingStep: Ticks;
  /** The room as measured. */
  readonly outline: readonly Point[];
  /** Numbered as they are told: on through the rooms of a joined floor. */
  readonly walls: readonly WallMark[];
  readonly cutouts: readonly (readonly Point[])[];
  /** What stands over the floor, such as a radiator, with its number among the cut-outs. */
  readonly covered: Room['covered'];
  readonly doorways: readonly DoorwayMark[];
  /** What gets floor: outlines anticlockwise, holes clockwise, after the expansion gap. */
  readonly floor: readonly (readonly Point[])[];
  /** Degrees the rows are turned from the room's x axis, anticlockwise. */
  readonly rowAngle: number;
  readonly rows: readonly FloorRow[];
  /** The edge of its planks towards the start wall, or towards the middle line. */
  readonly startEdge: LongEdge;
  /** In laying order. */
  readonly pieces: readonly FloorPiece[];
  /** Every plank that gives it a piece, with all that is cut from it, in the order in which it is first needed. */
  readonly planks: readonly SawPlank[];
  readonly plan: CutPlan;
  readonly summary: Summary;
  /** The ways to lay it that were compared, the best first; one line when none was left open. */
  readonly ways: readonly WayLine[];
  /** Where the rows could start, the usual start first; none where that leaves no strip. */
  readonly starts: readonly StartLine[];
  /** What the person should know though the floor can be laid: sentences. */
  readonly notes: readonly string[];
}

/** One way to lay a floor with what it comes to. */
export interface WayLine {
  /** Degrees the rows are turned from the room's x axis, anticlockwise. */
  readonly degrees: number;
  /** The lay direction that one types for it: '' for lengthwise. */
  readonly layDirection: string;
  readonly startSide: 'near' | 'far' | 'middle';
  readonly rowCount: number;
  readonly firstRowWidth: Ticks;
  readonly lastRowWidth: Ticks;
  /** Runs under the minimum rip somewhere. */
  readonly narrowRunCount: number;
  readonly plankCount: number;
  readonly bound: number;
  readonly shortestPiece: Ticks;
  readonly isChosen: boolean;
}

/** A start of the rows that was tried, with the strip that it leaves at each place where rows stop. */
export interface StartLine {
  readonly firstRowWidth: Ticks;
  readonly narrowest: Ticks;
  readonly isUsual: boolean;
  readonly isChosen: boolean;
  /** A whole plank's width where a seam between rows lies right on the line. */
  readonly strips: readonly { readonly place: string; readonly width: Ticks }[];
}

/** A wall by the number that cut-outs, doorways and notes go by. */
export interface WallMark {
  readonly wallNumber: number;
  readonly from: Point;
  readonly to: Point;
}

export interface DoorwayMark {
  readonly doorwayNumber: number;
  readonly from: Point;
  readonly to: Point;
  readonly floor: 'transition' | 'goes on' | 'stays shut';
}

export interface FloorRow {
  readonly rowNumber: number;
  /** Width the row is laid at; less than a plank when it is ripped. */
  readonly width: Ticks;
  /** Width at its narrowest, where a slanted wall tapers it, and where that is. */
  readonly narrowest: Ticks;
  readonly narrowestAt: Point;
  /** Whether its planks are turned round, tongue away from the rows before: behind a middle line. */
  readonly isReversed: boolean;
  /** Labels of the pieces that offcuts and strips waiting after this row will be: `9-1`, or `Hall 9-1` of another room. */
  readonly waiting: readonly string[];
  readonly polygon: readonly Point[];
}

export type CutKind = 'crosscut' | 'rip' | 'angled crosscut' | 'notch';

export interface FloorPiece {
  /** `3-2` is row 3, piece 2, counted along the row; `3-2b` its part beyond a wall or cut-out that divides it lengthwise. */
  readonly label: string;
  readonly rowNumber: number;
  readonly runNumber: number;
  readonly pieceNumber: number;
  /** To the long point where an end is angled. */
  readonly length: Ticks;
  /** Of the shorter long edge, as cuts leave it; equal to `length` when both ends are square, 0 where it runs out. */
  readonly shortPoint: Ticks;
  /** Rip width at the left and right end; equal unless the piece is tapered. */
  readonly widthLeft: Ticks;
  readonly widthRight: Ticks;
  /** The most that squaring its ends and edges adds to the gap at a wall; 0 where it is cut to the wall. */
  readonly squaredBy: Ticks;
  /** Width along the row of a prong that is left off, since trim covers its place; 0 for none. */
  readonly leftOff: Ticks;
  readonly plankNumber: number;
  readonly keeps: 'left end' | 'right end' | 'no end' | 'both ends';
  /** Label of the piece that was ripped, where it is the strip that this left; '' if none. */
  readonly stripOf: string;
  /** Label of the piece cut off the same plank before it, whose rest it comes from; '' if none. */
  readonly offcutOf: string;
  /** By how much it may be longer than drawn: what the plank has left beyond it. Null where it needs no such room. */
  readonly mayGrow: Ticks | null;
  /** Of a floor through several rooms the one it lies in, `Den + Hall` across both; '' in a floor of one room. */
  readonly room: string;
  /** In the order in which they are made. */
  readonly cuts: readonly CutKind[];
  readonly polygon: readonly Point[];
  /** Holes in it, and parts that a cut-out divides off. */
  readonly holes: readonly (readonly Point[])[];
  /** What to mark on it, sentences: notches, angles, tapers. */
  readonly marks: readonly string[];
  /** What to do with the rest of the plank, in words: `write 4-1 on it`, `waste 7 1/2"`, ``. */
  readonly rest: string;
}

export interface SawPlank {
  readonly plankNumber: number;
  /** In the order in which they are cut, strips last; at least one of them is for the floor itself. */
  readonly pieces: readonly SawPiece[];
  /** Left over after all its cuts, kerfs taken off. */
  readonly leftOver: Ticks;
}

/** A piece as the person at the saw needs it; all else of it stands among the pieces of its floor. */
export interface SawPiece {
  /** Name of the other room that it is for; '' for a piece of the floor itself. */
  readonly room: string;
  readonly label: string;
  readonly length: Ticks;
  readonly keeps: FloorPiece['keeps'];
  /** As of `FloorPiece`. */
  readonly stripOf: string;
  readonly rest: string;
}

export interface Summary {
  /** Square ticks. */
  readonly roomArea: number;
  readonly floorArea: number;
  readonly rowCount: number;
  readonly firstRowWidth: Ticks;
  readonly lastRowWidth: Ticks;
  /** Planks of the plan that are begun in this floor, then with the spares of the rules. */
  readonly plankCount: number;
  readonly planksToBuy: number;
  /** Null when the product does not say how many planks a box holds. */
  readonly boxCount: number | null;
  /** Other floors of the job that are laid with the same product: boxes are bought for all of them together. */
  readonly boughtWith: readonly string[];
  /** Other rooms that are cut from the same planks: `waste` and `proof` are of all of them together. */
  readonly sharedWith: readonly string[];
  /** Fraction of the planks of the plan that does not end up in the floor. */
  readonly waste: number;
  readonly shortestPiece: Ticks;
  /** Null when no two neighbouring rows have joints. */
  readonly tightestStagger: Ticks | null;
  readonly alignedJointCount: number;
  readonly cutCount: number;
  /** The most offcuts and strips that wait at once, of all the rooms that are cut from the same planks. */
  readonly mostWaiting: number;
  /** What area + 10 % would have ordered: planks, and boxes when known. */
  readonly tenPercentPlanks: number;
  readonly tenPercentBoxes: number | null;
  /** `cannot be done with fewer`, `at most n more than the fewest`, or that no plan meets all the rules. */
  readonly proof: string;
}
