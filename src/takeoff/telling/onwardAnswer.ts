/** FRONT DOOR of a floor that is being laid: what is asked of it, and what is answered. Plain JSON both ways, for another thread. */
import type { Ticks } from '../../geometry/length';
import type { RoomEntry } from '../entry';
import type { ListedCut } from '../planning/asLaid';
import { listedRows } from '../planning/asLaid';
import type { AsYouLay } from '../planning/asYouLay';
import { type FloorLaid, floorLaidOf } from '../planning/floorLaid';
import { drawAsOne } from '../planning/joinedFloor';
import { onwardProblemsOf } from '../planning/listMatches';
import { type AskedOffcut, offcutFit } from '../planning/offcutFit';
import { type PlannedOn, planOn } from '../planning/planOn';
import { type ChosenWay, chooseWay } from '../planning/ways';
import { asYouLayProblems } from '../reading/asYouLayProblems';
import type { Drawing } from '../reading/drawRoom';
import { drawRoom } from '../reading/drawRoom';
import type { ReadRoom } from '../reading/readRoom';
import type { Takeoff } from '../result';
import { lengthText } from '../text/lengthText';
import { withMeasuredWall } from './lastRow';
import { fitFaultText, fitWords } from './offcutFit';
import { onwardNeedOf, onwardTakeoffOf, onwardWords } from './onwardTakeoff';

/** A floor as its list has it, and what of it is wanted. */
export interface OnwardQuestion {
  readonly entry: RoomEntry;
  /** Laid as one floor with it. */
  readonly others: readonly RoomEntry[];
  readonly listed: readonly ListedCut[];
  readonly asYouLay: AsYouLay;
  /** The rest planned, an offcut tried, or what is left once it lies. */
  readonly wanted: 'rest' | 'left' | { readonly offcut: AskedOffcut; readonly label: string };
}

export type OnwardAnswer =
  | {
      readonly status: 'planned';
      readonly takeoff: Takeoff;
      /** What lies, what comes next, what is needed. */
      readonly words: readonly string[];
      /** The row from whose edge the far wall is measured; null where it is not. */
      readonly wallAfter: number | null;
      readonly spoiltCount: number;
    }
  | { readonly status: 'told'; readonly words: readonly string[] }
  | { readonly status: 'left'; readonly laid: FloorLaid }
  | { readonly status: 'problems'; readonly problems: readonly string[] };

/** A room, or rooms laid as one floor. */
export function drawFloor(entry: RoomEntry, others: readonly RoomEntry[]): Drawing {
  return others.length === 0 ? drawRoom(entry) : drawAsOne([entry, ...others]);
}

export function onwardAnswer(question: OnwardQuestion): OnwardAnswer {
  const drawn = drawFloor(question.entry, question.others);
  if (drawn.room === null) return { status: 'problems', problems: drawn.problems.map(({ text }) => text) };
  const way = chooseWay(drawn.room);
  const { wanted, listed, asYouLay } = question;
  if (wanted === 'rest') return planned(way, question);
  const problems = onwardProblemsOf(way.planned, listedRows(listed));
  if (problems.length > 0) return { status: 'problems', problems };
  if (wanted === 'left') {
    return { status: 'left', laid: floorLaidOf(way.planned, listed, boughtFor(way, asYouLay), asYouLay.spoiltBefore) };
  }
  return tried(way, listed, wanted);
}

function tried(
  { planned }: ChosenWay,
  listed: readonly ListedCut[],
  { offcut, label }: Exclude<OnwardQuestion['wanted'], string>,
): OnwardAnswer {
  const fit = offcutFit(planned, listed, offcut, label);
  if (typeof fit === 'string') {
    return { status: 'problems', problems: [fitFaultText(fit, label, 'mark' in offcut ? offcut.mark : '')] };
  }
  const { rules, units } = planned.floors[0].read;
  return { status: 'told', words: fitWords(fit, rules.minStagger, showIn(units)) };
}

function planned(way: ChosenWay, { listed, asYouLay }: OnwardQuestion): OnwardAnswer {
  const answer = planOn(way.planned, listed, asYouLay.partEnd);
  if ('problems' in answer) return { status: 'problems', problems: answer.problems };
  const wallAfter = measuredFrom(asYouLay, listed);
  if (typeof wallAfter === 'string') return { status: 'problems', problems: [wallAfter] };
  const { spoiltCount } = answer.on;
  return { status: 'planned', ...told(way, answer.on, { listed, asYouLay, wallAfter }), wallAfter, spoiltCount };
}

/** Or why it cannot be. */
function measuredFrom({ wall }: AsYouLay, listed: readonly ListedCut[]): number | null | string {
  if (!wall) return null;
  const open = listed.find(({ isLaid }) => !isLaid)?.rowNumber ?? Number.POSITIVE_INFINITY;
  const lying = Math.min(open - 1, listed[listed.length - 1].rowNumber);
  if (wall.afterRow !== null && wall.afterRow > lying) return asYouLayProblems.notLaid(wall.afterRow);
  return lying === 0 ? asYouLayProblems.noRowToMeasure() : (wall.afterRow ?? lying);
}

interface Found {
  readonly listed: readonly ListedCut[];
  readonly asYouLay: AsYouLay;
  readonly wallAfter: number | null;
}

function told(
  way: ChosenWay,
  on: PlannedOn,
  { listed, asYouLay, wallAfter }: Found,
): { readonly takeoff: Takeoff; readonly words: readonly string[] } {
  const takeoff = onwardTakeoffOf(on, listed, way.ways);
  const { read } = way.planned.floors[0];
  const show = showIn(read.units);
  const need = onwardNeedOf(on, boughtFor(way, asYouLay) - asYouLay.spoiltBefore, read.product.planksPerBox);
  const words = [...onwardWords(on, takeoff, need, show), ...partWords(takeoff, asYouLay.partEnd, on)];
  if (!asYouLay.wall || wallAfter === null) return { takeoff, words };
  const last = withMeasuredWall(takeoff, read, { ...asYouLay.wall, afterRow: wallAfter }, show);
  return { takeoff: last.takeoff, words: [...words, ...last.words] };
}

/** What goes over with the furniture. */
function partWords({ rows }: Takeoff, partEnd: number | null, on: PlannedOn): readonly string[] {
  const { begunRowCount, fewerOver } = on;
  if (partEnd === null || partEnd <= begunRowCount || partEnd >= rows.length) return [];
  const { waiting } = rows[partEnd - 1];
  const count = waiting.length === 1 ? '1 offcut goes' : `${waiting.length} offcuts go`;
  const over =
    waiting.length === 0 ? 'no offcut goes over to the rest' : `${count} over to the rest: ${waiting.join(', ')}`;
  const fewer = fewerOver
    ? ` With ${fewerOver.carriedCount === 0 ? 'none' : fewerOver.carriedCount} it takes ${fewerOver.planks} more ${fewerOver.planks === 1 ? 'plank' : 'planks'}.`
    : '';
  return [`First up to row ${partEnd}, then the other side: ${over}.${fewer}`];
}

/** Planks bought: as typed, or in whole boxes for the plan with its spares. */
function boughtFor({ planned }: ChosenWay, { boxesBought }: AsYouLay): number {
  const { product, rules } = planned.floors[0].read;
  const planks = planned.plan.plankCount + rules.spare;
  const { planksPerBox } = product;
  if (planksPerBox === null) return planks;
  return (boxesBought ?? Math.ceil(planks / planksPerBox)) * planksPerBox;
}

function showIn(units: ReadRoom['units']): (ticks: Ticks) => string {
  return (ticks) => lengthText(ticks, units, 'piece');
}
