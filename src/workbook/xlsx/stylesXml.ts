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
  base.append(made(part, 'xf', { numFmtId: 0, fontId: 0, fillId: 0, borderId: 0 }));
  looks?.before(base);
  const normal = made(part, 'cellStyles', { count: 1 });
  normal.append(made(part, 'cellStyle', { name: 'Normal', xfId: 0, builtinId: 0 }));
  looks?.after(normal);
  withWholeColors(part);
}

/** The format has a colour's opacity in front of it. Source: ECMA-376 part 1, 18.8.19. */
export function withWholeColors(part: Document | Element): void {
  for (const colored of part.querySelectorAll('[rgb]')) {
    const rgb = colored.getAttribute('rgb') ?? '';
    if (/^[0-9a-f]{6}$/i.test(rgb)) colored.setAttribute('rgb', `FF${rgb.toUpperCase()}`);
  }
}
