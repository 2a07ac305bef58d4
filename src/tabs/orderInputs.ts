/**
 * The coloured cells of the `Order` tab. What a person has typed into one holds when the order is filled again, for the
 * line of the same item, and the totals on the page use it too.
 */
import { isFilled } from '../geometry/lists';
import { type Totals, totalsOf } from '../order/money';
import type { Order } from '../order/order';
import { missingIn, type OrderLine, orderLine, totalOf } from '../order/orderLine';
import { type Cell, ownedCell, type TabBlock } from './block';
import type { Carried } from './keptCells';
import { cellToken, inputEntry, isRemembered, tokenOf } from './lineMemory';
import { aboveKept, ourTokens, placeKey } from './oldTab';
import { INPUT } from './order';
import type { TabAsRead } from './tabStore';

type InputName = 'allowance' | 'extra' | 'pack' | 'price';

/** How the headings of these columns begin; a currency may follow. What is needed is the plan's to say. */
const HEADINGS: readonly (readonly [InputName | 'needed', string])[] = [
  ['needed', 'Needed'],
  ['allowance', 'Allowance'],
  ['extra', 'Extra'],
  ['pack', 'In a pack'],
  ['price', 'Price'],
];
const FIRST_HEADING = 'Item';
const RATES = ['Tax on materials', 'Margin', 'Tax on the price'] as const;

/** A number typed into a coloured cell. */
interface TypedInput {
  /** The item of its line, or what the total is called. */
  readonly item: string;
  /** How many lines of that item stand above it. */
  readonly nth: number;
  readonly name: InputName;
  readonly value: number;
  readonly place: string;
}

/** What was typed into the coloured cells of an order. */
export type TypedInputs = readonly TypedInput[];

/** Finds the numbers that are not those we filled in, in the tab as it was read. */
export function typedInputs(old: TabAsRead): TypedInputs {
  const cells = aboveKept(old.cells);
  const top = cells.findIndex((row) => row.includes(FIRST_HEADING) && row.includes('Unit'));
  if (top < 0 || old.memory === '') return [];
  const columns = inputColumns(cells[top].map(String));
  const itemColumn = cells[top].indexOf(FIRST_HEADING);
  const seen = new Map<string, number>();
  return cells.slice(top + 1).flatMap((row, i): TypedInput[] => {
    const item = String(row[itemColumn] ?? '');
    if (item === '') return [];
    const nth = seen.get(item) ?? 0;
    seen.set(item, nth + 1);
    const r = top + 1 + i;
    const ours = ourTokens(old, r);
    if (ours.length === 0) return [];
    return columns.flatMap(({ name, column }): TypedInput[] => {
      const value = row[column];
      if (name === 'needed' || typeof value !== 'number' || !isUsable(name, value)) return [];
      const isOurs =
        ours.includes(tokenOf(value, '')) || isRemembered(old.memory, inputEntry(ours, name, tokenOf(value, '')));
      return isOurs ? [] : [{ item, nth, name, value, place: placeKey(r, column) }];
    });
  });
}

function inputColumns(headings: readonly string[]) {
  return HEADINGS.flatMap(([name, words]) => {
    const column = headings.findIndex((heading) => heading === words || heading.startsWith(`${words} `));
    return column < 0 ? [] : [{ name, column }];
  });
}

/** A pack of nothing, or less than nothing of anything, is a slip: it is put aside, not reckoned with. */
function isUsable(name: InputName, value: number): boolean {
  return Number.isFinite(value) && (name === 'pack' ? value > 0 : value >= 0);
}

/** The order with what was typed, and which of it found its line. */
export interface TypedOrder {
  readonly order: Order;
  readonly found: TypedInputs;
}

/** Reckons the order with what was typed, and says so in its notes. */
export function withTyped(order: Order, typed: TypedInputs): TypedOrder {
  const found: TypedInput[] = [];
  const replaced = new Map<OrderLine, OrderLine>();
  const notes: string[] = [];
  const seen = new Map<string, number>();
  for (const line of order.lines) {
    const nth = seen.get(line.item) ?? 0;
    seen.set(line.item, nth + 1);
    const own = typed.filter((input) => input.item === line.item && input.nth === nth && takes(line, input.name));
    if (own.length === 0) continue;
    found.push(...own);
    replaced.set(line, orderLine({ ...line, ...Object.fromEntries(own.map(({ name, value }) => [name, value])) }));
    notes.push(...own.map((input) => typedNote(input, line)));
  }
  const rates = ratesTyped(order, typed);
  found.push(...rates);
  notes.push(
    ...rates.map(({ item, value }) => `Typed in the order and kept: ${item}, ${Math.round(value * 1e4) / 100} %.`),
  );
  return { order: reckoned(order, replaced, rates, notes), found };
}

function takes({ rounding }: OrderLine, name: InputName): boolean {
  return name === 'price' || rounding !== 'none';
}

function typedNote({ item, name, value }: TypedInput, line: OrderLine): string {
  const shown = (number: number | null) =>
    number === null ? 'none' : name === 'allowance' ? `${Math.round(number * 1e4) / 100} %` : String(number);
  const words = { allowance: 'allowance', extra: 'extra', pack: 'in a pack', price: 'price' }[name];
  return `Typed in the order and kept: ${item}, ${words} ${shown(value)}, not ${shown(line[name])}. Clear the cell and fill the order again to go back.`;
}

/** The rates that count: tax where it is charged, and the margin. */
function ratesTyped({ house: { terms } }: Order, typed: TypedInputs): TypedInputs {
  const taxed = terms.taxOn === 'price' ? RATES[2] : RATES[0];
  return typed.filter(
    ({ item, name, value }) =>
      name === 'price' && (item === taxed || (item === RATES[1] && (terms.marginOf === 'cost' || value < 1))),
  );
}

function reckoned(
  order: Order,
  replaced: ReadonlyMap<OrderLine, OrderLine>,
  rates: TypedInputs,
  notes: readonly string[],
): Order {
  if (notes.length === 0) return order;
  const now = (line: OrderLine) => replaced.get(line) ?? line;
  const lines = order.lines.map(now);
  const before = new Set([...replaced.keys()].map(missingIn));
  const missing = [...replaced.values()].map(missingIn).filter(isFilled);
  const rate = (wanted: (item: string) => boolean) => rates.find(({ item }) => wanted(item))?.value;
  const { terms } = order.house;
  const margin = rate((item) => item === RATES[1]) ?? terms.margin;
  const tax = rate((item) => item !== RATES[1]) ?? terms.tax;
  const house = { ...order.house, terms: { ...terms, margin, tax } };
  return {
    ...order,
    house,
    lines,
    floors: order.floors.map((floor) => ({ ...floor, line: now(floor.line) })),
    covers: order.covers.map((cover) => ({ ...cover, line: now(cover.line) })),
    sticks: order.sticks.map((stick) => ({ ...stick, line: now(stick.line) })),
    totals: totalsFor(lines, { ...house.terms, tax: tax ?? 0 }),
    missing: [...missing, ...order.missing.filter((sentence) => !before.has(sentence))],
    notes: [...notes, ...order.notes],
  };
}

function totalsFor(lines: readonly OrderLine[], terms: Parameters<typeof totalsOf>[2]): Totals {
  const isLabour = ({ part }: OrderLine) => part === 'labour';
  return totalsOf(totalOf(lines.filter((line) => !isLabour(line))), totalOf(lines.filter(isLabour)), terms);
}

/** The tab with its coloured cells marked as inputs, and those that hold what a person typed as the person's. */
export function withInputs(block: TabBlock, typed: TypedInputs): TabBlock {
  const top = block.cells.findIndex((row) => row.some((cell) => cellToken(cell) === FIRST_HEADING));
  const columns = inputColumns(block.cells[top].map(cellToken));
  const seen = new Map<string, number>();
  const cells = block.cells.map((row, r) => {
    if (r <= top) return row;
    const item = cellToken(row[0]);
    const nth = seen.get(item) ?? 0;
    seen.set(item, nth + 1);
    return row.map((cell, c): Cell => {
      if (cell.look.background !== INPUT.background) return cell;
      const name = columns.find(({ column }) => column === c)?.name ?? 'price';
      const isTyped = typed.some((input) => input.item === item && input.nth === nth && input.name === name);
      return ownedCell(cell, isTyped ? 'person' : { input: name });
    });
  });
  return { ...block, cells };
}

/** Where those stand in the old tab that are in the new one. */
export function carriedInputs(found: TypedInputs): Carried {
  return new Set(found.map(({ place }) => place));
}
