/**
 * Plain texts that stand at the right of their cells. The engine exports no look that it takes for the usual one, and it takes
 * a plain text such as `$5.00` for a number (19.3.7: `extractCustomStyle` asks for the content alone): standing at the right,
 * it would come back at the left.
 */
import type { LibraryStyle } from './oSpreadsheetCells';
import type { SpreadsheetLibrary } from './oSpreadsheetCopy';

interface StyledCell {
  readonly format?: string;
  readonly style?: LibraryStyle;
}

interface CellPlugin {
  extractCustomStyle(cell: StyledCell): LibraryStyle;
}

const installed = new WeakSet<CellPlugin>();

export function installTextsAtTheRight({ registries }: SpreadsheetLibrary): void {
  const cells = registries.corePluginRegistry.get('cell').prototype as unknown as CellPlugin;
  if (installed.has(cells)) return;
  installed.add(cells);
  const extract = cells.extractCustomStyle;
  cells.extractCustomStyle = function (cell) {
    const style = extract.call(this, cell);
    return cell.format === '@' && cell.style?.align === 'right' ? { ...style, align: 'right' } : style;
  };
}
