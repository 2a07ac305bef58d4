/**
 * What can be said of an entry at once, before anything is planned: its problems, and the room as far as it is known,
 * so that walls are drawn while the product is not typed yet.
 */
import type { Region } from '../../geometry/polygon';
import { checkedEntry, LONGEST_ROOM_NAME } from '../../tabs/checkedEntry';
import { tabProblems } from '../../tabs/tabProblems';
import { BLANK_RULES, type ProductEntry, type RoomEntry } from '../../takeoff/entry';
import { type DrawnRoom, drawRoom } from '../../takeoff/reading/drawRoom';
import type { DoorwayMark, Problem, WallMark } from '../../takeoff/result';

/** A room with its floor, no piece in it yet. */
export interface Sketch {
  readonly outline: Region[number];
  readonly cutouts: Region;
  readonly doorways: readonly DoorwayMark[];
  readonly floor: Region;
  readonly walls: readonly WallMark[];
}

/** Problems, and the walls as far as they are known. */
export interface FirstLook {
  readonly problems: readonly Problem[];
  /** Null while the walls themselves are not known. */
  readonly sketch: Sketch | null;
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
  if (!checked.ok) return { problems: [...named, ...checked.problems], sketch: null };
  const whole = drawRoom(entry);
  if (whole.room) return { problems: named, sketch: sketchOf(whole.room) };
  const room: RoomEntry = { ...entry, product: ANY_PRODUCT, rules: BLANK_RULES };
  const parts = [room, { ...room, cutouts: [], doorways: [] }].map(drawRoom);
  const known = parts.find((part) => part.room)?.room;
  const found = [...named, ...whole.problems, ...parts[0].problems];
  return { problems: withoutRepeats(found), sketch: known ? sketchOf(known) : null };
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

function sketchOf({ room, floor }: DrawnRoom): Sketch {
  const { outline, cutouts, doorways, walls } = room;
  return { outline, cutouts, doorways, floor, walls };
}
