/**
 * How long it takes to fill tabs in the embedded workbook, without a page: the rooms of a house one after the other, its
 * order with all their tabs, and the homeowner's page, each for the first time and again. Median of several workbooks; the
 * machine should be idle. The calls of the platform's services are counted: they are the same in every run.
 */
import type { HouseEntry } from '../../src/order/houseEntry';
import { planHouse } from '../../src/order/planHouse';
import { fillTabs } from '../../src/sidebar/filling/fillTabs';
import { fillHomeowner, fillOrder, type JobAnswer } from '../../src/tabs/jobTabs';
import { takeoff } from '../../src/takeoff/takeoff';
import type { Engine } from '../../src/workbook/engine';
import type { Workbook } from '../../src/workbook/workbook';
import { storeOf } from '../../src/workbook/workbookStore';
import { builtWorkbook } from '../support/builtWorkbook';
import { demoJob, fiveRooms } from '../support/demoHouse';
import { benchTable, type Cell } from './benchTable';
import { medianOf, sumOf } from './sums';

/** Workbooks, one after the other; of a process the first is slower. */
const WORKBOOKS = 3;

/** What one filling took, milliseconds, and what it asked of the services. */
interface Filled {
  readonly name: string;
  readonly tabs: number;
  readonly ms: number;
  readonly planning: number;
  readonly engine: number;
  readonly calls: Readonly<Record<string, number>>;
}

/** Lines of two tables: times, and calls by service. */
export async function fillTables(): Promise<{ readonly times: string[]; readonly calls: string[] }> {
  const runs: (readonly Filled[])[] = [];
  for (let i = 0; i < WORKBOOKS; i++) runs.push(await fillingsOfOneWorkbook());
  const [first] = runs;
  const median = (at: number, of: (filled: Filled) => number) => medianOf(runs.map((run) => of(run[at])));
  const rows = first.map(({ name, tabs, calls, ms }, i): Cell[] => [
    name,
    tabs,
    median(i, (filled) => filled.ms),
    median(i, ({ ms: all, planning }) => all - planning),
    median(i, (filled) => filled.engine),
    ms,
    sumOfCalls(calls),
  ]);
  const columns = ['tabs', 'all, ms', 'without planning', 'in the engine', 'first of a process', 'service calls'];
  return {
    times: benchTable([{ heading: 'filled' }, ...columns.map((heading) => ({ heading }))], rows),
    calls: callLines(first),
  };
}

async function fillingsOfOneWorkbook(): Promise<readonly Filled[]> {
  const workbook = builtWorkbook();
  const house: HouseEntry = { ...demoJob, rooms: fiveRooms.map(({ name }) => name) };
  const watch = watchOf(workbook);
  const answered = (work: (plan: typeof planHouse) => Promise<JobAnswer>) => async () => {
    const answer = await work(watch.plan);
    if (answer.status === 'problems') throw new Error(JSON.stringify(answer.problems));
    return answer.tabs.length;
  };
  const store = storeOf(workbook);
  const order = answered((plan) => fillOrder(store, house, undefined, plan));
  const homeowner = answered((plan) => fillHomeowner(store, house, plan));
  return [
    await watch.timed('five rooms', () => fillRooms(workbook, watch)),
    await watch.timed('their order', order),
    await watch.timed("homeowner's page", homeowner),
    await watch.timed('the order again', order),
    await watch.timed('the page again', homeowner),
  ];
}

/** Every room saved, with its cut list and its floor plan. */
async function fillRooms(workbook: Workbook, watch: Watch): Promise<number> {
  let tabs = 1;
  for (const entry of fiveRooms) {
    const result = watch.planned(() => takeoff(entry));
    if (result.status === 'problems') throw new Error(JSON.stringify(result.problems));
    const filling = await fillTabs({ entry, takeoff: result.takeoff }, storeOf(workbook), { now: () => 0 });
    if (filling.failures.length > 0) throw new Error(filling.failures.join(' '));
    tabs += filling.filled.length - 1;
  }
  return tabs;
}

/** Measures what is done in a workbook. */
interface Watch {
  readonly plan: typeof planHouse;
  planned<Result>(work: () => Result): Result;
  timed(name: string, work: () => Promise<number>): Promise<Filled>;
}

function watchOf(workbook: Workbook): Watch {
  let planning = 0;
  const engine = timedEngine(workbook.engine);
  const planned = <Result>(work: () => Result): Result => {
    const start = performance.now();
    const result = work();
    planning += performance.now() - start;
    return result;
  };
  return {
    planned,
    plan: (...given) => planned(() => planHouse(...given)),
    async timed(name, work) {
      workbook.resetCalls();
      const before = engine.ms();
      planning = 0;
      const start = performance.now();
      const tabs = await work();
      const ms = performance.now() - start;
      return { name, tabs, ms, planning, engine: engine.ms() - before, calls: workbook.calls() };
    },
  };
}

/** Adds up the time spent in the engine, however its methods call each other. */
function timedEngine(engine: Engine): { ms(): number } {
  let [sum, depth] = [0, 0];
  const members = engine as unknown as Record<string, unknown>;
  for (const [name, member] of Object.entries(members)) {
    if (typeof member !== 'function') continue;
    members[name] = function (this: Engine, ...given: unknown[]): unknown {
      const start = performance.now();
      depth += 1;
      try {
        return member.apply(this, given);
      } finally {
        depth -= 1;
        if (depth === 0) sum += performance.now() - start;
      }
    };
  }
  return { ms: () => sum };
}

function sumOfCalls(calls: Filled['calls']): number {
  return sumOf(Object.values(calls));
}

/** One line a service and method, those called most often first. */
function callLines(fillings: readonly Filled[]): string[] {
  const methods = [...new Set(fillings.flatMap(({ calls }) => Object.keys(calls)))];
  const rows = methods.map((method) => [method, ...fillings.map(({ calls }) => calls[method] ?? 0)]);
  const all = (row: readonly Cell[]) => sumOf(row.slice(1).map(Number));
  const sorted = rows.sort((a, b) => all(b) - all(a) || String(a[0]).localeCompare(String(b[0])));
  return benchTable([{ heading: 'method' }, ...fillings.map(({ name }) => ({ heading: name }))], sorted);
}
