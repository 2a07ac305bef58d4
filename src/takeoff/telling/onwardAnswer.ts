/** FRONT DOOR of floors that are being laid: what is asked of them, and what is answered. Plain JSON both ways, for another thread. */

import type { Ticks } from '../../geometry/length';
import { lastOf, sumOf } from '../../geometry/lists';
import type { RoomEntry } from '../entry';
import type { ListedCut } from '../planning/asLaid';
import type { AsYouLay } from '../planning/asYouLay';
import { planAwayFromCorners } from '../planning/awayFromCorners';
import { type FloorLaid, floorLaidOf } from '../planning/floorLaid';
import { drawAsOne } from '../planning/joinedFloor';
import { floorsOnLists, listedPlanOf } from '../planning/listedPlan';
import { onwardProblemsOf } from '../planning/listMatches';
import { type AskedOffcut, offcutFit } from '../planning/offcutFit';
import type { PlannedFloors } from '../planning/planFloors';
import { type Asked, type PlannedOn, planOn } from '../planning/planOn';
import { type ChosenWay, chooseWay } from '../planning/ways';
import { asYouLayProblems } from '../reading/asYouLayProblems';
import type { LaidFloor } from '../reading/drawnRoom';
import type { Drawing } from '../reading/drawRoom';
import { drawRoom } from '../reading/drawRoom';
import { problems as sentences } from '../reading/problems';
import type { ReadRoom } from '../reading/readRoom';
import type { Takeoff } from '../result';
import { lengthText } from '../text/lengthText';
import { carriedWords, partLiesWords } from './carriedWords';
import { withMeasuredWall } from './lastRow';
import { fitFaultText, fitWords } from './offcutFit';
import { onwardNeedOf, onwardTakeoffOf, onwardWords } from './onwardTakeoff';

/** A floor as its list has it. */
export interface FloorOnList {
  readonly entry: RoomEntry;
  /** Laid as one floor with it. */
  readonly others: readonly RoomEntry[];
  readonly listed: readonly ListedCut[];
  readonly asYouLay: AsYouLay;
}

/** A floor, and what of it is wanted. */
export interface OnwardQuestion {
  /** All floors that are cut from the same planks, in the order of their plan. */
  readonly floors: readonly FloorOnList[];
  /** Which of them is asked for. */
  readonly asked: number;
  /** The rest planned, an offcut tried, or what is left once it lies. */
  readonly wanted: 'rest' | 'left' | { readonly offcut: AskedOffcut; readonly label: string };
}

/** A floor planned on. */
export interface FloorPlannedOn {
  readonly takeoff: Takeoff;
  /** The row from whose edge the far wall is measured; null where it is not. */
  readonly wallAfter: number | null;
  readonly spoiltCount: number;
}

export type OnwardAnswer =
  | {
      readonly status: 'planned';
      /** As they were asked for. */
      readonly floors: readonly FloorPlannedOn[];
      /** What lies, what comes next, what is needed. */
      readonly words: readonly string[];
    }
  | { readonly status: 'told'; readonly words: readonly string[] }
  | { readonly status: 'left'; readonly laid: FloorLaid }
  | { readonly status: 'problems'; readonly problems: readonly string[] };

/** A room, or rooms laid as one floor. */
export function drawFloor(entry: RoomEntry, others: readonly RoomEntry[]): Drawing {
  return others.length === 0 ? drawRoom(entry) : drawAsOne([entry, ...others]);
}

export function onwardAnswer(question: OnwardQuestion): OnwardAnswer {
  const drawn = question.floors.map(({ entry, others }) => ({ entry, ...drawFloor(entry, others) }));
  const found = drawn.flatMap(({ entry, problems }, i) =>
    problems.map(({ text }) => (i === question.asked ? text : sentences.inRoom(entry.name, text))),
  );
  const ways = drawn.flatMap(({ room }) => (room ? [chooseWay(room)] : []));
  if (ways.length < drawn.length) return { status: 'problems', problems: found };
  const floors = ways.flatMap(({ planned }) => planned.floors);
  const planned = ways.length === 1 ? ways[0].planned : planAwayFromCorners(floors, {});
  return new Asking(question, ways, planned).answer();
}

type Lists = readonly (readonly ListedCut[])[];

/** Holds the floors that are asked about. */
class Asking {
  private readonly lists: Lists;
  private readonly read: ReadRoom;
  private readonly show: (ticks: Ticks) => string;

  constructor(
    private readonly question: OnwardQuestion,
    private readonly ways: readonly ChosenWay[],
    private readonly planned: PlannedFloors<LaidFloor>,
  ) {
    this.lists = question.floors.map(({ listed }) => listed);
    this.read = ways[question.asked].planned.floors[0].read;
    this.show = (ticks) => lengthText(ticks, this.read.units, 'piece');
  }

  answer(): OnwardAnswer {
    const { wanted } = this.question;
    if (wanted === 'rest') return this.rest();
    const problems = onwardProblemsOf(this.planned, this.lists);
    if (problems.length > 0) return { status: 'problems', problems };
    return wanted === 'left' ? this.left() : this.tried(wanted);
  }

  private left(): OnwardAnswer {
    const { floors, asked } = this.question;
    const here = floors[asked].asYouLay.spoiltBefore;
    const listed = listedPlanOf(this.planned, this.lists);
    const laid = floorLaidOf(listed, asked, this.bought(), { here, all: this.spoiltBefore() });
    return { status: 'left', laid };
  }

  private tried({ offcut, label }: Exclude<OnwardQuestion['wanted'], string>): OnwardAnswer {
    const fit = offcutFit(listedPlanOf(this.planned, this.lists), this.question.asked, offcut, label);
    if (typeof fit === 'string') {
      return { status: 'problems', problems: [fitFaultText(fit, label, 'mark' in offcut ? offcut.mark : '')] };
    }
    return { status: 'told', words: fitWords(fit, this.read.rules.minStagger, this.show) };
  }

  private rest(): OnwardAnswer {
    const { floors, asked } = this.question;
    const part = this.part();
    const answer = planOn(this.planned, this.lists, { list: asked, part });
    if (!('on' in answer)) return { status: 'problems', problems: answer.problems };
    const measured = floors.map((floor, i) => measuredFrom(floor, this.lastSideFrom(i)));
    const faults = measured.filter((after) => typeof after === 'string');
    if (faults.length > 0) return { status: 'problems', problems: faults };
    const { on } = answer;
    const told = floors.map((_, i) => this.floorTold(on, i, measured[i] as number | null));
    const need = onwardNeedOf(on, this.bought() - this.spoiltBefore(), this.read.product.planksPerBox);
    const takeoffs = told.map(({ takeoff }) => takeoff);
    const words = [
      ...onwardWords(on, takeoffs, asked, need, this.show),
      ...(part ? this.partWords(takeoffs[part.list], part, on) : []),
      ...told.flatMap((floor) => floor.words),
    ];
    return { status: 'planned', floors: told.map(({ words: _, ...floor }) => floor), words };
  }

  private floorTold(
    on: PlannedOn,
    list: number,
    wallAfter: number | null,
  ): FloorPlannedOn & { readonly words: readonly string[] } {
    const { listed, asYouLay } = this.question.floors[list];
    const way = this.ways[list];
    const takeoff = onwardTakeoffOf(on, list, listed, way.ways);
    const spoiltCount = on.spoiltCounts[list];
    if (!asYouLay.wall || wallAfter === null) return { takeoff, wallAfter, spoiltCount, words: [] };
    const { read } = way.planned.floors[0];
    const last = withMeasuredWall(takeoff, read, { ...asYouLay.wall, afterRow: wallAfter }, this.show);
    return { takeoff: last.takeoff, wallAfter, spoiltCount, words: last.words };
  }

  /** The first row of the floor, or of its side behind a middle line. */
  private lastSideFrom(list: number): number {
    const { floors } = this.ways[list].planned;
    return lastOf(floors).layout.rows[0].rowNumber;
  }

  /** What is laid first on the floor that is asked for, or else on another one that says so. */
  private part(): Asked['part'] {
    const { floors, asked } = this.question;
    const ends = floors.map(({ asYouLay }) => asYouLay.partEnd);
    const list = ends[asked] === null ? ends.findIndex((end) => end !== null) : asked;
    const end = ends[list] ?? null;
    return end === null ? null : { list, end };
  }

  /** What goes over after the part, or that it lies. */
  private partWords(
    { rows, entry }: Takeoff,
    { list, end }: NonNullable<Asked['part']>,
    on: PlannedOn,
  ): readonly string[] {
    const last = rows.findIndex(({ rowNumber }) => rowNumber === end);
    if (last < 0 || last === rows.length - 1) return [];
    const row = this.planned.firstRows[floorsOnLists(this.planned)[list][0]] + last;
    const isLeft = on.sides.some(({ firstRow, begunCount, endRow }) => row >= firstRow + begunCount && row < endRow);
    const words = isLeft ? carriedWords(end, rows[last].waiting, on.fewerOver) : partLiesWords(end);
    return [list === this.question.asked ? words : sentences.inRoom(entry.name, words)];
  }

  private spoiltBefore(): number {
    return sumOf(this.question.floors, ({ asYouLay }) => asYouLay.spoiltBefore);
  }

  /** Planks bought: as typed, in the list that is asked for or in another, or in whole boxes for the plan with its spares. */
  private bought(): number {
    const { floors, asked } = this.question;
    const spares = sumOf(this.ways, ({ planned }) => planned.floors[0].read.rules.spare);
    const planks = this.planned.plan.plankCount + spares;
    const { planksPerBox } = this.read.product;
    if (planksPerBox === null) return planks;
    const typed = [floors[asked], ...floors].find(({ asYouLay }) => asYouLay.boxesBought !== null);
    return (typed?.asYouLay.boxesBought ?? Math.ceil(planks / planksPerBox)) * planksPerBox;
  }
}

/**
 * Or why it cannot be.
 *
 * @param firstRow the first row towards the wall that is measured: 1, or the first behind a middle line
 */
function measuredFrom({ asYouLay: { wall }, listed }: FloorOnList, firstRow: number): number | null | string {
  if (!wall) return null;
  const open = listed.find(({ isLaid, rowNumber }) => !isLaid && rowNumber >= firstRow)?.rowNumber;
  const lying = (open ?? lastOf(listed).rowNumber + 1) - 1;
  if (wall.afterRow !== null && wall.afterRow < firstRow) return asYouLayProblems.otherSide(wall.afterRow, firstRow);
  if (wall.afterRow !== null && wall.afterRow > lying) return asYouLayProblems.notLaid(wall.afterRow);
  return lying < firstRow ? asYouLayProblems.noRowToMeasure() : (wall.afterRow ?? lying);
}
