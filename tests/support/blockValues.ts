import type { TabBlock } from '../../src/tabs/block';

/** A block's cells as the spreadsheet gives them back when they are read. */
export function blockValues(block: TabBlock): (string | number | boolean)[][] {
  return block.cells.map((row) =>
    row.map(({ value }) => {
      if (value.kind === 'text') return value.text;
      if (value.kind === 'number') return value.number;
      if (value.kind === 'tick') return value.ticked;
      return value.kind === 'formula' ? value.formula : '';
    }),
  );
}

/** Every text of a block, row by row. */
export function blockTexts(block: TabBlock): string[][] {
  return blockValues(block).map((row) =>
    row.filter((value): value is string => typeof value === 'string' && value !== ''),
  );
}
