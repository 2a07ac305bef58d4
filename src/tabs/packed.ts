/**
 * A block made small for the way from the page to the sheet: a floor plan has 14,000 cells and a dozen looks. And the
 * cells of a tab on the way back, whose dates may not pass as they are.
 */
import type { Cell, CellValue, Look, Owner, TabBlock } from './block';
import type { CellContent } from './tabStore';

export interface PackedBlock extends Omit<TabBlock, 'cells'> {
  readonly looks: readonly Look[];
  /** Row by row; a blank cell is the index of its look, any other its index and value, and its owner if not ours. */
  readonly cells: readonly (readonly PackedCell[])[];
}

export type PackedCell = number | readonly [number, CellValue] | readonly [number, CellValue, Owner];

/** A cell as it passes: a date is its year, month (from 1) and day. */
export type PackedContent = string | number | boolean | null | readonly [number, number, number];

export function packBlock(block: TabBlock): PackedBlock {
  const looks: Look[] = [];
  const indexes = new Map<string, number>();
  const indexOf = (look: Look): number => {
    const key = [look.bold, look.background, look.color, look.size, look.align, look.wrap].join();
    const known = indexes.get(key);
    if (known !== undefined) return known;
    indexes.set(key, looks.length);
    looks.push(look);
    return looks.length - 1;
  };
  const pack = ({ value, look, owner }: Cell): PackedCell => {
    if (value.kind === 'blank') return indexOf(look);
    return owner === undefined ? [indexOf(look), value] : [indexOf(look), value, owner];
  };
  const cells = block.cells.map((row) => row.map(pack));
  return { ...block, looks, cells };
}

/** Whether something that came is a packed block with cells in it; what stands in the cells is not looked at. */
export function isPackedBlock(value: unknown): value is PackedBlock {
  if (typeof value !== 'object' || value === null) return false;
  const { title, mark, looks, cells } = value as Partial<PackedBlock>;
  const isNamed = typeof title === 'string' && typeof mark === 'string' && mark !== '';
  return isNamed && Array.isArray(looks) && Array.isArray(cells) && cells.length > 0 && cells.every(Array.isArray);
}

export function unpackBlock({ looks, ...packed }: PackedBlock): TabBlock {
  const unpack = (cell: PackedCell): Cell => {
    if (typeof cell === 'number') return { value: { kind: 'blank' }, look: looks[cell] };
    const [lookIndex, value, owner] = cell;
    return owner === undefined ? { value, look: looks[lookIndex] } : { value, look: looks[lookIndex], owner };
  };
  return { ...packed, cells: packed.cells.map((row) => row.map(unpack)) };
}

export function unpackContent(content: PackedContent): CellContent {
  return typeof content === 'object' && content !== null ? new Date(content[0], content[1] - 1, content[2]) : content;
}
