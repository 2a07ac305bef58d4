/** Good calls of the functions that take a list of their own: walls, first pieces, lengths of trim. */
import { decimalOf, fewestBins } from '../exactLengths';
import type { Draw } from './draw';
import { unitsCell } from './goodCalls';
import { numberFault, orBlank, usualOf } from './plainCalls';
import { INCH, MM, type System, typedLength } from './typedLengths';
import { SQUARE, typedPercentage } from './typedOthers';
import type { Call } from './verdict';

/** A list as a column or as a row of cells. */
export function listCells(draw: Draw, cells: readonly unknown[]): unknown {
  if (draw.oneIn(3)) return [cells];
  const blanks = Array.from({ length: draw.oneIn(4) ? 2 : 0 }, () => '');
  return [...cells, ...blanks].map((cell) => [cell]);
}

/** An L: A right, c right, A - b left, D - c right, b right, D. Its area is A x c and b x (D - c). */
export function roomAreaCall(draw: Draw): Call {
  const system = draw.pick<System>(['us', 'metric']);
  // In thousandths of a foot or metre.
  const [a, d] = [draw.whole(3000, 20_000), draw.whole(3000, 20_000)];
  const [b, c] = [draw.whole(1000, a - 1000), draw.whole(1000, d - 1000)];
  const right = draw.pick<readonly unknown[]>([['R', 'r', 'right', 90, '90°'], ['R']]);
  const walls = [a, c, a - b, d - c, b, d].map((wall, i) => [
    draw.pick<unknown>([wall / 1000, decimalOf(wall), `${decimalOf(wall)} ${system === 'us' ? 'ft' : 'm'}`]),
    i === 2 ? draw.pick<unknown>(['L', 'left', -90]) : i === 5 ? draw.pick<unknown>(['R', '']) : draw.pick(right),
  ]);
  const waste = typedPercentage(draw, 0, 3000);
  const wanted = ((a * c + b * (d - c)) / 1e6) * (1 + waste.hundredths / 10_000);
  // Corners of a walk are whole ticks: each wall may be half of one off.
  const relative = ((12 * 4 * 1e-6 * 100) / Number(SQUARE[system])) * 1e4 + 1e-5;
  return {
    name: 'PLANK_ROOM_AREA',
    cells: [walls, waste.cell, unitsCell(draw, system)],
    reckoned: (answer) => numberFault(answer, wanted, relative),
  };
}

/** A verdict for each row by every pair of joints, in a run or, without one, all the way round a plank. */
export function staggerCall(draw: Draw): Call {
  const system = draw.pick<System>(['us', 'metric']);
  const plank = typedLength(draw, [500, 2000], 'plank', system);
  const most = Number(plank.exact / MM);
  const pieces = Array.from({ length: draw.whole(1, 5) }, () => typedLength(draw, [20, most], 'plank', system));
  const stagger = orBlank(draw, typedLength(draw, [0, 400], 'plank', system), usualOf(system, 8n * INCH, 200n * MM));
  const run = draw.oneIn(3) ? null : typedLength(draw, [most, 9000], 'room', system);
  const isFar = pieces.map(({ exact }, i) => {
    if (i === 0) return true;
    const nearest = nearestJoints(exact, pieces[i - 1].exact, plank.exact, run === null ? null : run.exact);
    return nearest === null || nearest >= stagger.exact;
  });
  const cells = pieces.map(({ cell }) => cell);
  return {
    name: 'PLANK_STAGGER',
    cells: [listCells(draw, cells), plank.cell, stagger.cell, run?.cell ?? '', unitsCell(draw, system)],
    reckoned: (answer) => {
      const verdicts = (Array.isArray(answer) ? answer.flat() : [answer]).map((verdict) => verdict === 'OK');
      return verdicts.join() === isFar.join() ? null : `answered ${verdicts.join()} where ${isFar.join()} is right`;
    },
  };
}

/** Least distance of two rows' joints; null where a row has none. */
function nearestJoints(piece: bigint, before: bigint, plank: bigint, run: bigint | null): bigint | null {
  // Without a run, some planks further on everything has been seen.
  const end = run ?? 6n * plank;
  const jointsFrom = (first: bigint) => {
    const joints: bigint[] = [];
    for (let joint = first; joint < end; joint += plank) joints.push(joint);
    return joints;
  };
  let nearest: bigint | null = null;
  for (const a of jointsFrom(piece)) {
    for (const b of jointsFrom(before)) {
      const distance = a > b ? a - b : b - a;
      if (nearest === null || distance < nearest) nearest = distance;
    }
  }
  return nearest;
}

/** A few lengths of trim, shared out in every way there is. */
export function trimCall(draw: Draw): Call {
  const system = draw.pick<System>(['us', 'metric']);
  const stock = typedLength(draw, [2000, 5000], 'room', system);
  const most = Number(stock.exact / MM);
  const lengths = Array.from({ length: draw.whole(1, 6) }, () => typedLength(draw, [50, most], 'room', system));
  const kerf = orBlank(draw, typedLength(draw, [0, 12], 'plank', system), usualOf(system, INCH / 8n, 3n * MM));
  const wanted = fewestBins(
    lengths.map(({ exact }) => exact),
    stock.exact,
    kerf.exact,
  );
  const cells = lengths.map(({ cell }) => cell);
  return {
    name: 'PLANK_TRIM',
    cells: [listCells(draw, cells), stock.cell, kerf.cell, unitsCell(draw, system)],
    reckoned: (answer) => numberFault(answer, wanted, 0),
  };
}

/** A wall that runs out straight, measured where the pieces meet: each end is what is measured there, less the gap. */
export function lastRipsCall(draw: Draw): Call {
  const count = draw.whole(1, 8);
  const every = draw.whole(300, 1200);
  const gap = draw.whole(1, 12);
  const [from, step] = [draw.whole(115, 125), draw.whole(-6, 6)];
  const distances = Array.from({ length: count + 1 }, (_, i) => from + i * step);
  const ends = distances.map((distance) => distance - gap);
  const pieces = Array.from({ length: count }, () => draw.pick<unknown>([every, `${every} mm`]));
  return {
    name: 'PLANK_LAST_RIPS',
    cells: [
      listCells(draw, pieces),
      draw.pick<unknown>([every / 1000, `${every} mm`]),
      listCells(draw, distances),
      192,
      gap,
      draw.pick<unknown>(['', 50]),
      '',
      'metric',
    ],
    reckoned(answer) {
      const rows = (answer as readonly (readonly unknown[])[]).filter(([piece]) => typeof piece === 'number');
      const found = rows.map((row) => row.slice(0, 3));
      const wanted = ends.slice(1).map((end, i) => [i + 1, ends[i], end]);
      const [told, right] = [JSON.stringify(found), JSON.stringify(wanted)];
      return told === right ? null : `answered ${told} where ${right} is right`;
    },
  };
}

/** Offcuts at the ends of a row of whole millimetres: what is over, or how much too short, by whole numbers. */
export function fitCall(draw: Draw): Call {
  const [plank, run, first] = [1200, draw.whole(2500, 6000), draw.whole(200, 1200)];
  const last = ((run - first - 1) % plank) + 1;
  const offcuts = Array.from({ length: draw.whole(1, 4) }, (_, i) => {
    return { mark: 'ABCD'[i], length: draw.whole(100, 1190), ends: draw.pick(['left', 'right', 'both', 'none']) };
  });
  const held = offcuts.map(({ mark, length, ends }) => [mark, draw.pick<unknown>([length, `${length} mm`]), ends]);
  const begins = (end: string, piece: number, { length, ends }: (typeof offcuts)[number]) => {
    if (ends !== 'both' && ends !== end) return `it has no ${end} end`;
    return length >= piece ? `fits, ${length - piece} mm over` : `${piece - length} mm too short`;
  };
  return {
    name: 'PLANK_FIT',
    cells: [held, draw.pick<unknown>([run / 1000, `${run} mm`]), first, plank, '', '', 'metric'],
    reckoned(answer) {
      const rows = (answer as readonly (readonly unknown[])[]).slice(1);
      const wrong = offcuts.find((offcut, i) => {
        const [mark, asFirst, asLast] = rows[i].map(String);
        const isTold =
          asFirst.startsWith(begins('right', first, offcut)) && asLast.startsWith(begins('left', last, offcut));
        return mark !== offcut.mark || !isTold;
      });
      return wrong ? `${JSON.stringify(wrong)} is told otherwise: ${JSON.stringify(rows)}` : null;
    },
  };
}
