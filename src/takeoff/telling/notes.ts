/** What a person should know about a floor that can be laid, in sentences. */
import type { BrokenRule } from '../../cutting/job';
import { mmOf, type Ticks, type Units } from '../../geometry/length';
import { overlongFloorsOf } from '../../layout/expansion';
import { narrowRunsOf } from '../../layout/rows';
import { RUN_LIMITS } from '../../layout/rules';
import { TAPE_READING } from '../../room/corners';
import type { RoomNote, TapeResidual } from '../../room/faults';
import type { PlannedFloors } from '../planning/planFloors';
import type { LaidFloor } from '../reading/drawnRoom';
import { problems } from '../reading/problems';
import type { FloorPiece } from '../result';
import { lengthText, pieceText, roomText } from '../text/lengthText';
import { numberText } from '../text/numberText';
import { brokenRuleTexts } from './brokenRules';
import { cornerNotes } from './cornerNotes';
import { joinedNotes } from './joinedNotes';
import { lengthwiseNotes } from './lengthwise';
import { middleNotes } from './middleNotes';
import { slideNotes } from './slideIn';
import { squaredNotes } from './squared';
import { startNotes } from './starts';

/** Rules that could not be met first, then the rows, the room, the doorways. */
export function notesOf(
  planned: PlannedFloors<LaidFloor>,
  indices: readonly number[],
  pieces: readonly FloorPiece[],
): readonly string[] {
  const [first] = indices;
  const { read, room } = planned.floors[first];
  return [
    ...indices.flatMap((i) => planNotesOf(planned, i)),
    ...(indices.length > 1 ? middleNotes(planned, first) : []),
    ...startNotes(planned.floors[first], read.units),
    ...squaredNotes(planned.floors[first], pieces),
    ...indices.flatMap((i) => cornerNotes(planned, i, pieces)),
    ...lengthwiseNotes(pieces),
    ...joinedNotes(planned.floors[first]),
    ...room.notes.map((note) => roomNote(note, read.units)),
    ...spanNotes(planned, first),
    ...casingNotes(planned, first),
    ...slideNotes(indices.map((i) => planned.floors[i])),
  ];
}

/** What the rows and the plan alone have to say. */
export function planNotesOf(planned: PlannedFloors, floorIndex: number): readonly string[] {
  const { read, layout } = planned.floors[floorIndex];
  const show = pieceText(read.units);
  return [
    ...brokenNotes(planned, floorIndex, read.units),
    ...narrowNotes(planned, floorIndex, show),
    ...gridNotes(planned, show),
    ...(layout.rows.length === 1 ? [`The floor is one row, ${show(layout.rows[0].width)} wide.`] : []),
  ];
}

type Show = (length: Ticks) => string;

function brokenNotes(
  { floors, markedPlan, firstRows }: PlannedFloors,
  floorIndex: number,
  units: Units,
): readonly string[] {
  const [from, to] = [firstRows[floorIndex], firstRows[floorIndex + 1]];
  const { rows } = floors[floorIndex].layout;
  const here = markedPlan.broken.filter((broken) => broken.rowIndex >= from && broken.rowIndex < to);
  return brokenRuleTexts(here, (broken) => brokenRuleText(broken, rows[broken.rowIndex - from].rowNumber, units));
}

/** `Row 3: 6" is less than the minimum stagger of 8".` Lengths of `broken` in ticks. */
function brokenRuleText({ rule, found, wanted }: BrokenRule, rowNumber: number, units: Units): string {
  const show = pieceText(units);
  return problems.brokenRule(`Row ${rowNumber}`, rule, show(found), show(wanted));
}

function roomNote(note: RoomNote, units: Units): string {
  const show = pieceText(units);
  switch (note.code) {
    case 'misfit spread':
      return `The walls missed their start by ${show(note.by)}; the miss was spread over them. Measure again if it is more than your tape allows.`;
    case 'diagonals spread':
      return `The two diagonals differ from the walls by ${show(note.by)}; the difference was spread over all six lengths.`;
    case 'far from square':
      return `By the diagonal the room is far from square: the other one would be ${lengthText(note.other, units, 'room')}. Measure it too.`;
    case 'measures spread':
      return `The measures do not quite agree, so each was changed a little: ${residualsText(note.residuals, show)}. Measure again any that is further off than your tape allows.`;
    case 'held by turns':
      return 'Too few diagonals to fix the shape of the room: the rest was drawn with the turns as typed. Measure more diagonals to be sure.';
    case 'taken as square':
      return 'The diagonal fits a square corner to within a tape reading, so the room is drawn square.';
    case 'cut-out reaches outside':
      return `Cut-out ${note.cutoutNumber} reaches outside the room; only the part inside counts.`;
    case 'floor in parts':
      return `The cut-outs divide the floor into ${note.partCount} parts.`;
  }
}

/** What each measure is off by, the most first, those within a tape reading left out. */
function residualsText(residuals: readonly TapeResidual[], show: (length: Ticks) => string): string {
  return residuals
    .filter(({ by }) => Math.abs(by) > TAPE_READING)
    .sort((one, other) => Math.abs(other.by) - Math.abs(one.by))
    .map(({ what, number, found, by }) => {
      return `${what} ${number} ${show(found)}, drawn ${show(Math.abs(by))} ${by > 0 ? 'longer' : 'shorter'}`;
    })
    .join('; ');
}

function narrowNotes(planned: PlannedFloors, floorIndex: number, show: Show): readonly string[] {
  const { read, layout } = planned.floors[floorIndex];
  const { minRip } = read.rules;
  const narrowest = new Map<number, Ticks>();
  for (const { rowNumber, place } of narrowRunsOf(layout, minRip))
    narrowest.set(rowNumber, Math.min(place.width, narrowest.get(rowNumber) ?? place.width));
  const worstFirst = [...narrowest].sort(([, a], [, b]) => a - b);
  const sentences = worstFirst.map(
    ([rowNumber, width]) =>
      `Row ${rowNumber} is ${show(width)} at its narrowest, under the minimum rip of ${show(minRip)}.`,
  );
  const shown = sentences.slice(0, 3);
  const more = sentences.length - shown.length;
  return more > 0 ? [...shown, `${more} more ${more === 1 ? 'row is' : 'rows are'} under it somewhere.`] : shown;
}

/** Where the floor runs further than its product may, and where the expansion joint goes. */
function spanNotes(planned: PlannedFloors<LaidFloor>, floorIndex: number): readonly string[] {
  const { entry, read, room, layout } = planned.floors[floorIndex];
  const show = roomText(read.units);
  const open = room.doorways.filter(({ floor }) => floor === 'goes on').map(({ doorwayNumber }) => doorwayNumber);
  const place = open.length > 0 ? `at doorway ${open.join(' or ')}` : 'where a transition can cover it';
  const usual = `as usual for ${entry.product.kind} (published: ${RUN_LIMITS[entry.product.kind].range})`;
  return overlongFloorsOf(layout, read.limits).map(
    ({ way, found, allowed }) =>
      `The floor is ${show(found)} ${way} the rows; ${show(allowed)} is the most without an expansion joint, ${read.limits.isOwn[way] ? 'as entered' : usual}. Plan a joint ${place}; the product's instructions decide.`,
  );
}

function gridNotes({ grid }: PlannedFloors, show: Show): readonly string[] {
  if (grid.unit === grid.markingStep) return [];
  // In millimetres to the hundredth: rounded to a step it would look like a whole number of them.
  const plank = `${numberText(mmOf(grid.plankLength), 2)} mm`;
  return [
    `A plank of ${plank} is not a whole number of marking steps of ${show(grid.markingStep)}: staggers and pieces are kept a step or two longer, so that marked lengths still meet the rules.`,
  ];
}

function casingNotes(planned: PlannedFloors<LaidFloor>, floorIndex: number): readonly string[] {
  const { read, room, through } = planned.floors[floorIndex];
  const show = pieceText(read.units);
  const open = room.doorways.filter((doorway) => doorway.tongue !== null).map(({ doorwayNumber }) => doorwayNumber);
  const isGoneThrough = through.length > room.doorways.filter(({ floor }) => floor === 'goes on').length;
  if (open.length === 0 && !isGoneThrough) return [];
  const height = read.product.thickness > 0 ? `${show(read.product.thickness)} (the plank)` : "the plank's thickness";
  const numbered = open.length === 1 ? `doorway ${open[0]}` : `doorways ${open.join(', ')}`;
  const joined = 'every doorway between the rooms';
  const where = open.length === 0 ? joined : isGoneThrough ? `${numbered} and ${joined}` : numbered;
  return [`Undercut the casings of ${where} by ${height} plus the underlay, so that the floor slides under.`];
}
