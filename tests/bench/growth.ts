/**
 * How the time grows with the rows: seeded rooms, rectangular and L-shaped, from 10 to 1,000 rows. Beside what waits at most
 * stands how many wait between the legs of that room in any plan of its planks, at the least.
 */
import loadHighs from 'highs';
import type { CutJob } from '../../src/cutting/job';
import type { Solver } from '../support/exactAnswer';
import { metricFloor } from '../support/randomJobs';
import { type SeededRandom, seededRandom } from '../support/seededRandom';
import { waitingBetween } from '../support/waitingAtLeast';
import { benchTable } from './benchTable';
import { type Measured, measure } from './measure';
import { medianOf, sumOf } from './sums';

const ROW_COUNTS = [10, 20, 50, 100, 200, 500, 1000];
const ROOMS_OF_EACH = 3;

/** Lines of the table. */
export async function growthTable(effort: number): Promise<string[]> {
  const solver = await loadHighs();
  const rows = ROW_COUNTS.map((rowCount) => {
    const lShaped = measureRooms(rowCount, lShapedRoom, effort);
    return [
      rowCount,
      ...summaryOf(measureRooms(rowCount, rectangularRoom, effort)),
      ...summaryOf(lShaped),
      leastBetweenLegs(solver, lShaped),
    ];
  });
  const columns = ['ms', 'slowest', 'steps', 'proved', 'over bound', 'waiting'].map((heading) => ({
    heading,
    decimals: heading === 'ms' || heading === 'slowest' ? 1 : 0,
  }));
  const shaped = (shape: string) => columns.map((column) => ({ ...column, heading: `${shape} ${column.heading}` }));
  const headings = [{ heading: 'rows' }, ...shaped('rectangle'), ...shaped('L'), { heading: 'at least wait' }];
  return benchTable(headings, rows);
}

/** What waits at the least between the legs of the room in which most wait. */
function leastBetweenLegs(solver: Solver, rooms: readonly MeasuredRoom[]): number {
  const { job, plan } = rooms.reduce((a, b) => (b.waits.most > a.waits.most ? b : a));
  const border = job.rows.findIndex(({ runs }) => runs[0]?.length !== job.rows[0]?.runs[0]?.length);
  return waitingBetween(solver, job, border, plan.plankCount);
}

interface MeasuredRoom extends Measured {
  readonly job: CutJob;
}

function measureRooms(
  rowCount: number,
  room: (random: SeededRandom, rows: number) => CutJob,
  effort: number,
): MeasuredRoom[] {
  return Array.from({ length: ROOMS_OF_EACH }, (_, n) => {
    const job = room(seededRandom(rowCount * 31 + n + 1), rowCount);
    return { job, ...measure(`a room of ${rowCount} rows`, job, effort) };
  });
}

/** Median and slowest of the median times, median steps, rooms proved, planks over the bound in all, the most that wait at once. */
function summaryOf(rooms: readonly Measured[]): number[] {
  const times = rooms.map(({ median }) => median);
  return [
    medianOf(times),
    Math.max(...times),
    medianOf(rooms.map(({ plan }) => plan.steps)),
    rooms.filter(({ plan }) => plan.stop === 'proved fewest').length,
    sumOf(rooms.map(({ plan }) => plan.plankCount - plan.bound)),
    Math.max(...rooms.map(({ waits }) => waits.most)),
  ];
}

function rectangularRoom(random: SeededRandom, rowCount: number): CutJob {
  const length = random.whole(3000, 9000);
  return metricFloor(Array.from({ length: rowCount }, () => ({ room: 0, width: 192, runs: [{ x: 0, length }] })));
}

/** The short leg lies at the left or at the right, and takes a third to two thirds of the rows. */
function lShapedRoom(random: SeededRandom, rowCount: number): CutJob {
  const long = random.whole(4000, 9000);
  const short = random.whole(1800, long - 1000);
  const x = random.whole(0, 1) * (long - short);
  const longRows = Math.round((rowCount * random.whole(33, 67)) / 100);
  const runs = (i: number) => (i < longRows ? [{ x: 0, length: long }] : [{ x, length: short }]);
  return metricFloor(Array.from({ length: rowCount }, (_, i) => ({ room: 0, width: 192, runs: runs(i) })));
}
