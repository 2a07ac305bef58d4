/**
 * What can be said of an entry at once, before anything is planned: its problems, and the room as far as it is known,
 * so that walls are drawn while the product is not typed yet.
 */

import type { Units } from '../../geometry/length';
import { entryAfter } from '../../geometry/lists';
import { anticlockwise, type Outline, type Region } from '../../geometry/polygon';
import { bandOf } from '../../layout/rows';
import { type Room, roomAreaOf } from '../../room/outline';
import { checkedEntry, LONGEST_ROOM_NAME } from '../../tabs/checkedEntry';
import { tabProblems } from '../../tabs/tabProblems';
import { BLANK_RULES, type ProductEntry, type RoomEntry } from '../../takeoff/entry';
import { rowsAtOnce } from '../../takeoff/planning/ways';
import type { DrawnRoom } from '../../takeoff/reading/drawnRoom';
import { drawRoom } from '../../takeoff/reading/drawRoom';
import type { DoorwayMark, Problem, WallMark } from '../../takeoff/result';
import { contradictedOf, type Measure, measuresOf } from './measures';
import { type OpenWalk, openWalkOf } from './openWalk';

/** A room with its floor, no piece in it yet. */
export interface Sketch {
  readonly units: Units;
  /** Square ticks, cut-outs taken off. */
  readonly roomArea: number;
  readonly outline: Region[number];
  readonly cutouts: Region;
  readonly covered: Room['covered'];
  readonly doorways: readonly DoorwayMark[];
  readonly floor: Region;
  readonly walls: readonly WallMark[];
  /** Bands of the rows, as far as they are known without a plan. */
  readonly rows: readonly Outline[];
  /** Degrees the rows are turned from the room's x axis, anticlockwise. */
  readonly rowAngle: number;
  /** What the room was measured by, from corner to corner; none where it was not measured along its walls. */
  readonly measures: readonly Measure[];
}

/** Problems, and the walls as far as they are known. */
export interface FirstLook {
  readonly problems: readonly Problem[];
  /** Null while the walls themselves are not known. */
  readonly sketch: Sketch | null;
  /** The walls as the measures nearly make them, where one of these contradicts the others. */
  readonly nearly: Sketch | null;
  /** Walls in order that do not close yet. */
  readonly walk: OpenWalk | null;
}

/** Stands in for a product that is not typed yet: its planks are not shown. */
const ANY_PRODUCT: ProductEntry = {
  name: '',
  kind: 'laminate',
  plankLength: '1200 mm',
  plankWidth: '200 mm',
  thickness: '',
  planksPerBox: '',
  boxCoverage: '',
  pricePerBox: '',
};

/** Every problem of the entry, and its walls if they can be drawn without what is wrong. */
export function firstLookAt(entry: RoomEntry): FirstLook {
  const named = nameProblems(entry.name);
  const checked = checkedEntry(entry);
  if (!checked.ok) return { problems: [...named, ...checked.problems], sketch: null, nearly: null, walk: null };
  const whole = drawRoom(entry);
  if (whole.room) return { problems: named, sketch: sketchOf(whole.room, true), nearly: null, walk: null };
  const room: RoomEntry = { ...entry, product: ANY_PRODUCT, rules: BLANK_RULES };
  const parts = [room, { ...room, cutouts: [], doorways: [] }].map(drawRoom);
  const known = parts.find((part) => part.room)?.room;
  const found = [...named, ...whole.problems, ...parts[0].problems];
  const { shape, units } = entry;
  const nearly = known ? null : nearlyOf({ ...room, cutouts: [], doorways: [], bows: [] });
  const walk = known || nearly || shape.kind !== 'walls in order' ? null : openWalkOf(shape.walls, units);
  return { problems: withoutRepeats(found), sketch: known ? sketchOf(known, false) : null, nearly, walk };
}

/** Tabs are named after the room. */
function nameProblems(name: string): readonly Problem[] {
  const { length } = name.trim();
  if (length === 0) return [{ field: 'name', text: tabProblems.noRoomName() }];
  return length > LONGEST_ROOM_NAME ? [{ field: 'name', text: tabProblems.longName(length, LONGEST_ROOM_NAME) }] : [];
}

function withoutRepeats(problems: readonly Problem[]): readonly Problem[] {
  const key = ({ field, text }: Problem) => `${field}\n${text}`;
  const first = new Map(problems.map((problem) => [key(problem), problem] as const));
  return [...first.values()];
}

/** @param hasPlanks the planks are those that were typed */
function sketchOf(drawn: DrawnRoom, hasPlanks: boolean): Sketch {
  const { room, floor, read } = drawn;
  const { outline, cutouts, covered, doorways, walls } = room;
  const laid = hasPlanks ? rowsAtOnce(drawn) : null;
  const frame = laid?.layout.frame;
  const rows = laid && frame ? laid.layout.rows.map((row) => bandOf(row, frame)) : [];
  const roomArea = roomAreaOf(room);
  const measures = measuresOf(
    drawn.entry,
    walls.map(({ from }) => from),
  );
  const rowAngle = frame?.degrees ?? 0;
  return { units: read.units, roomArea, outline, cutouts, covered, doorways, floor, walls, rows, rowAngle, measures };
}

/** No floor is shown in it: which walls it has is not settled. */
function nearlyOf(entry: RoomEntry): Sketch | null {
  const found = contradictedOf(entry);
  if (!found) return null;
  const { corners, measures } = found;
  const outline = anticlockwise(corners);
  const walls = corners.map((from, i) => ({ wallNumber: i + 1, from, to: entryAfter(corners, i) }));
  const nothing = { cutouts: [], covered: [], doorways: [], floor: [], rows: [], rowAngle: 0 };
  return { units: entry.units, roomArea: 0, outline, walls, measures, ...nothing };
}
