/** Four ordinary floors as typed, each planned both ways, beside the practice of carrying the last offcut. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { checkCutPlan, type Ledger, ledgerOf } from '../../src/cutting/plan/ledger';
import { finished } from '../../src/cutting/steps';
import type { RoomEntry } from '../../src/takeoff/entry';
import { drawAsOne } from '../../src/takeoff/planning/joinedFloor';
import { chooseWayInSteps } from '../../src/takeoff/planning/ways';
import { drawRoom } from '../../src/takeoff/reading/drawRoom';
import { readRoomFile } from '../../src/workbook/roomFiles';
import { benchTable, type Cell } from './benchTable';
import { waitsOf } from './measure';
import { carryLastOffcut } from './practices';

const FOLDER = 'tests/bench/floors';

/** Lines of the table. */
export function floorsTable(): string[] {
  const columns = [
    { heading: 'floor' },
    { heading: 'planned for' },
    { heading: 'planks' },
    { heading: 'over bound' },
    { heading: 'boxes' },
    { heading: 'waiting' },
    { heading: 'rows waited' },
    { heading: 'mean wait', decimals: 1 },
    { heading: 'aligned' },
    { heading: 'cuts' },
    { heading: 'last pieces of a rest' },
    { heading: 'with play' },
    { heading: 'ms' },
    { heading: 'carry' },
    { heading: 'its waiting' },
  ];
  const files = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
  const rows = files.flatMap((name) => (['', 'easy'] as const).map((aim) => floorRow(join(FOLDER, name), aim)));
  return benchTable(columns, rows);
}

/** @throws Error when the file has problems or its plan breaks a law */
function floorRow(path: string, aim: '' | 'easy'): Cell[] {
  const name = basename(path, '.json');
  const { entries, problems } = readRoomFile(JSON.parse(readFileSync(path, 'utf8')), name);
  const asked = entries.map((entry): RoomEntry => ({ ...entry, rules: { ...entry.rules, aim } }));
  const { room } = asked.length > 1 ? drawAsOne(asked) : drawRoom(asked[0]);
  if (problems.length > 0 || room === null) throw new Error(`The floor ${name} cannot be planned.`);
  const start = performance.now();
  const { job, plan } = finished(chooseWayInSteps(room)).planned;
  const ms = performance.now() - start;
  const breaches = checkCutPlan(job, plan);
  if (breaches.length > 0) throw new Error(`The plan of ${name} is not legal: ${breaches.join('; ')}`);
  const ledger = ledgerOf(job, plan);
  const { most, mean } = waitsOf(ledger.waiting);
  const lasts = lastPiecesOfRests(ledger, job.plankLength, job.kerf);
  const carried = carryLastOffcut(job);
  const isLegal = checkCutPlan(job, carried).length === 0;
  return [
    name,
    aim === 'easy' ? 'easy' : 'fewest planks',
    plan.plankCount,
    plan.plankCount - plan.bound,
    Math.ceil(plan.plankCount / (room.read.product.planksPerBox ?? 1)),
    most,
    ledger.waiting.rowsWaited,
    mean,
    ledger.alignedJointCount,
    ledger.cutCount,
    lasts.length,
    lasts.filter((room) => room >= (job.play ?? 0)).length,
    ms,
    isLegal ? carried.plankCount : 'not legal',
    waitsOf(ledgerOf(job, carried).waiting).most,
  ];
}

/** By how much each piece that ends at a wall may grow that is cut from what an earlier piece left. */
function lastPiecesOfRests({ planks }: Ledger, plankLength: number, kerf: number): number[] {
  return planks.flatMap(({ pieces, pieceLength }) => {
    const later = pieces.slice(1).filter(({ from }) => from === 'left' || from === 'middle');
    const room = plankLength - pieceLength - kerf * (pieces.length - 1);
    return later.map(() => Math.floor(room / later.length));
  });
}
