/** Any call of any custom function: good ones with their reckoning, and good ones with something broken. */
import type { Draw } from './draw';
import { BY_CELL, goodRowsCall } from './goodCalls';
import { junkCell, junkRange } from './junk';
import { fitCall, lastRipsCall, roomAreaCall, staggerCall, trimCall } from './listCalls';
import { compareCall, countCall, cutsCall, offcutsCall, onwardCall } from './planCalls';
import type { Call } from './verdict';

export type Functions = Readonly<Record<string, (...cells: readonly unknown[]) => unknown>>;

type CallMaker = (draw: Draw) => Call;

const LISTS: readonly CallMaker[] = [roomAreaCall, staggerCall, trimCall, lastRipsCall, fitCall];

/** Planning takes a hundred times as long as a sum: one call in so many is of such a function. */
const PLANS_ONE_IN = 60;

/** What makes calls of these functions. */
export function callMaker(functions: Functions): CallMaker {
  const plans: readonly CallMaker[] = [
    (draw) => countCall(draw, functions.PLANK_OFFCUTS),
    ...[offcutsCall, cutsCall, compareCall, onwardCall],
  ];
  return (draw) => {
    const good = goodCall(draw, plans);
    return draw.oneIn(2) ? good : broken(draw, good);
  };
}

function goodCall(draw: Draw, plans: readonly CallMaker[]): Call {
  if (draw.oneIn(PLANS_ONE_IN)) return draw.pick(plans)(draw);
  return draw.oneIn(4) ? draw.pick(LISTS)(draw) : goodRowsCall(draw, draw.pick(BY_CELL));
}

/** The same call with one argument or two, or a cell of them, in which anything may stand; answered in any way that is well formed. */
function broken(draw: Draw, { name, cells }: Call): Call {
  const changed = [...cells];
  for (let changes = draw.whole(1, 2); changes > 0; changes--) {
    const at = draw.whole(0, cells.length - 1);
    changed[at] = brokenArgument(draw, changed[at]);
  }
  const given = draw.oneIn(12) ? changed.slice(0, draw.whole(0, cells.length)) : changed;
  return { name, cells: draw.oneIn(30) ? [...given, junkCell(draw)] : given };
}

function brokenArgument(draw: Draw, good: unknown): unknown {
  if (!Array.isArray(good)) return draw.oneIn(4) ? junkRange(draw) : junkCell(draw);
  switch (draw.whole(0, 5)) {
    case 0:
      return junkRange(draw);
    case 1:
      return junkCell(draw);
    case 2:
      return good.slice(0, draw.whole(0, good.length));
    case 3:
      return good.map((line) => (Array.isArray(line) ? [...line, junkCell(draw)] : line));
    default: {
      const row = draw.whole(0, Math.max(0, good.length - 1));
      const column = draw.whole(0, Math.max(0, (good[row]?.length ?? 1) - 1));
      return good.map((line, r) =>
        r === row && Array.isArray(line) ? line.map((cell, c) => (c === column ? junkFor(draw, line, c) : cell)) : line,
      );
    }
  }
}

/** Names stand in the first of several columns and are given back: no cell holds a number of no end to be shown. */
function junkFor(draw: Draw, line: readonly unknown[], column: number): unknown {
  const junk = junkCell(draw);
  const isName = column === 0 && line.length > 2;
  return isName && typeof junk === 'number' && !Number.isFinite(junk) ? 'no end' : junk;
}
