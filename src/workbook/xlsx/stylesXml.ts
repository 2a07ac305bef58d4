/** The file's looks, finished: said in full, as programs other than the most lenient want them. */
import { made } from './xml';

const PARTS = ['NumberFormat', 'Font', 'Fill', 'Border', 'Alignment'];

export function finishStyles(part: Document): void {
  const looks = part.getElementsByTagName('cellXfs')[0];
  // Without these another program may take a number format or a fill as meant for a named style only.
  for (const look of looks?.children ?? []) {
    for (const name of PARTS) look.setAttribute(`apply${name}`, '1');
    look.setAttribute('xfId', '0');
  }
  const base = made(part, 'cellStyleXfs', { count: 1 });
  base.append(made(part, 'xf', { numFmtId: 0, fontId: addMeasuringFont(part), fillId: 0, borderId: 0 }));
  looks?.before(base);
  const normal = made(part, 'cellStyles', { count: 1 });
  normal.append(made(part, 'cellStyle', { name: 'Normal', xfId: 0, builtinId: 0 }));
  looks?.after(normal);
  withWholeColors(part);
}

/**
 * Widths of columns are counted in digits of the named style's font, and the engine takes 7 pixels for one. Arial of 10 points
 * has 7.4, which LibreOffice does not round: every page would be 6 % too wide and printed that much smaller. At 9.4 points
 * they are just under 7.0 (Adobe's metrics: 556 thousandths of the height). Cells name fonts of their own, so none is set in this one.
 *
 * @returns its number
 */
function addMeasuringFont(part: Document): number {
  const fonts = part.getElementsByTagName('fonts')[0];
  if (!fonts) return 0;
  const font = fonts.appendChild(made(part, 'font', {}));
  font.append(made(part, 'sz', { val: 9.4 }), made(part, 'name', { val: 'Arial' }));
  fonts.setAttribute('count', String(fonts.children.length));
  return fonts.children.length - 1;
}

/** The format has a colour's opacity in front of it. Source: ECMA-376 part 1, 18.8.19. */
export function withWholeColors(part: Document | Element): void {
  for (const colored of part.querySelectorAll('[rgb]')) {
    const rgb = colored.getAttribute('rgb') ?? '';
    if (/^[0-9a-f]{6}$/i.test(rgb)) colored.setAttribute('rgb', `FF${rgb.toUpperCase()}`);
  }
}
