/** What the tints of a drawing mean; they differ in black and white as well. */
import { drawn, element } from '../parts/dom';

const KEYS = [
  ['whole', '', 'whole plank'],
  ['cut', '', 'cut'],
  ['offcut', 'from-offcut', 'from an offcut'],
  ['whole', 'is-ripped', 'ripped'],
] as const;

/** One line of samples with their words. */
export function keyOfTints(): HTMLElement {
  return element('p', 'key', ...KEYS.map(([tint, over, words]) => sampleOf(tint, over, words)));
}

/** How to read the measures of a room. */
export function measuresKey(): HTMLElement {
  return element('p', 'key', '+ drawn longer than measured, − shorter');
}

function sampleOf(tint: string, over: string, words: string): HTMLElement {
  const box = { x: 0.5, y: 0.5, width: 21, height: 11 };
  const lines =
    over === 'from-offcut' ? 'M2,11L12,1M9,11L19,1' : over === 'is-ripped' ? 'M1,3.5H21M1,6.5H21M1,9.5H21' : '';
  const sample = drawn(
    'svg',
    { width: 22, height: 12, 'aria-hidden': 'true' },
    drawn('rect', { class: `piece ${tint}`, ...box }),
    drawn('path', { class: 'hatch', d: lines }),
  );
  return element('span', {}, sample, ` ${words}`);
}
