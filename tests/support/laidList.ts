/**
 * A plain room with its cut list in a spreadsheet, while it is laid: ticks and typed cells, planned on, judged by the laws of any
 * plan. By hand: 12' less two gaps of 3/8" is 143 1/4", 2292 sixteenths; 10' less them is 119 1/4": 19 rows of 6" and one of
 * 5 1/4". 20 runs of 143 1/4" are 59.7 planks of 48"; 60 are planned, eight to a box: 64 bought.
 */
import type { CutJob } from '../../src/cutting/job';
import { checkCutPlan } from '../../src/cutting/judge/laws';
import { fillTabs } from '../../src/sidebar/filling/fillTabs';
import { planOf } from '../../src/sidebar/planning/plan';
import { type FloorBeingLaid, type PlanOnTabs, planOnTabs } from '../../src/tabs/planOnTabs';
import type { TabStore } from '../../src/tabs/tabStore';
import type { RoomEntry } from '../../src/takeoff/entry';
import { onwardAnswer } from '../../src/takeoff/telling/onwardAnswer';
import { listedPieces, planOf as planOfList } from './cutListTab';
import { type FakeBook, type FakeSheet, fakeBook, installFakes } from './fakeSpreadsheet';
import { storeOf } from './fakeStore';
import { plainRoom } from './roomEntries';

const LIST = 'Cut list - Plain room';

export const laidRoom: RoomEntry = {
  ...plainRoom,
  rules: {
    ...plainRoom.rules,
    ...{ expansionGap: '3/8"', kerf: '1/8"', play: 0, minPiece: '8"', minStagger: '8"', markingStep: '1/16"' },
    reuseStrips: 'no',
  },
};

export function beingLaid(entry: RoomEntry): FloorBeingLaid {
  return { entry, others: [], work: onwardAnswer };
}

type Written = Extract<PlanOnTabs, { status: 'written' }>;

/** Holds the spreadsheet. */
export class LaidList {
  readonly book: FakeBook = fakeBook();
  readonly store: TabStore;

  constructor() {
    installFakes(this.book);
    this.store = storeOf(this.book);
  }

  async fill(entry: RoomEntry): Promise<void> {
    const plan = planOf(entry, []);
    if (plan.status === 'problems') throw new Error(plan.problems[0].text);
    await fillTabs({ entry, takeoff: plan.takeoff }, this.store, { now: () => 0 });
  }

  sheet(name = LIST): FakeSheet {
    const sheet = this.book.sheets.find((candidate) => candidate.name === name);
    if (!sheet) throw new Error(`There is no tab ${name}: ${this.book.sheets.map((candidate) => candidate.name)}`);
    return sheet;
  }

  /** The lines of the list for laying, by label. */
  lines(name = LIST): Map<string, readonly unknown[]> {
    const values = this.sheet(name).values();
    const saw = values.findIndex((row) => row[0] === 'Done');
    const pieces = values.slice(0, saw).filter((row) => /^\d+-\d+$/.test(String(row[1])));
    return new Map(pieces.map((row) => [String(row[1]), row]));
  }

  cell(label: string, heading: string) {
    const values = this.sheet().values();
    const row = values.findIndex((cells) => cells[1] === label) + 1;
    const column = values.find((cells) => cells[0] === 'Laid')?.indexOf(heading) ?? -1;
    return this.sheet().at(row, column + 1);
  }

  /** The cell to type in of a line under `As you lay it`. */
  typed(label: string) {
    const row = this.sheet()
      .values()
      .findIndex((cells) => cells[2] === label);
    if (row < 0) throw new Error(`There is no line ${label}`);
    return this.sheet().at(row + 1, 6);
  }

  tickRows(count: number): void {
    for (const label of this.lines().keys()) {
      if (Number.parseInt(label, 10) <= count) this.cell(label, 'Laid').value = true;
    }
  }

  async planOn(entry = laidRoom): Promise<Written> {
    const answer = await planOnTabs(this.store, beingLaid(entry));
    if (answer.status === 'written') return answer;
    throw new Error(answer.status === 'problems' ? answer.problems.join(' ') : answer.status);
  }

  /** Piece, length, end to keep, cut, rest. */
  sizes(): readonly (readonly unknown[])[] {
    return [...this.lines().values()].map((row) => row.slice(1, 6));
  }

  plankCount(): number {
    return new Set([...this.lines().values()].map((row) => Number.parseInt(String(row[10]), 10))).size;
  }

  /** @param found rows that are longer than drawn, in sixteenths */
  laws(found: Readonly<Record<number, number>> = {}): readonly string[] {
    const pieces = listedPieces([...this.sheet().values()].map((row) => row.map(String)));
    const rows = Array.from({ length: 20 }, (_, i) => ({
      room: 0,
      width: i === 19 ? 84 : 96,
      runs: [{ x: 0, length: 2292 + (found[i + 1] ?? 0) }],
    }));
    const job: CutJob = {
      ...{ plankLength: 768, plankWidth: 96, kerf: 2, play: 0, minPiece: 128, minStagger: 128, alignedDistance: 32 },
      rows,
      ripPairs: [],
    };
    return checkCutPlan(job, planOfList(pieces, job));
  }
}
