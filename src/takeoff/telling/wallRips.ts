/** The last row at a wall that was measured, in words. */

import type { Ticks } from '../../geometry/length';
import type { WallRip, WallRips, WallRules } from '../../layout/wallRips';
import { wallProblems } from '../reading/wallProblems';
import { plural } from '../text/plural';

/** What is still to be laid; where the last row comes out too narrow, what can still be done about it. */
export function wallWords(
  { wholeRowCount, narrowest, widest }: WallRips,
  { plankWidth: width, gap }: WallRules,
  { minRip, trimCover }: { readonly minRip: Ticks; readonly trimCover: Ticks },
  show: (ticks: Ticks) => string,
): readonly string[] {
  const last = `the last one, ${narrowest === widest ? show(widest) : `${show(Math.max(0, narrowest))} to ${show(widest)}`} wide.`;
  const rows = plural(wholeRowCount, 'whole row', 'whole rows');
  const first = wholeRowCount === 0 ? `Next is ${last}` : `${rows}, then ${last}`;
  if (narrowest >= minRip) return [first];
  const more = minRip - narrowest;
  const under = `Under the minimum rip of ${show(minRip)}.`;
  const either = widest + gap <= trimCover ? ` ${wallProblems.leaveOff(show(widest + gap))}` : '';
  if (wholeRowCount === 0) return [first, `${under} ${wallProblems.noRowLeft()}${either}`];
  if (widest + more > width || width - more < minRip) return [first, `${under} ${wallProblems.outOfLine()}`];
  return [first, `${under} ${wallProblems.ripBefore(show(width - more), show(minRip))}${either}`];
}

/** `straight`, or the places that are marked besides. */
export function wallCut({ left, right, scribed }: WallRip, show: (ticks: Ticks) => string): string {
  if (Math.min(left, right, ...scribed.map(({ width }) => width)) <= 0) return 'runs out: no piece at the narrow end';
  if (scribed.length === 0) return left === right ? 'rip' : 'rip, tapered';
  const places = scribed.map(({ at, width }) => `${show(width)} at ${show(at)}`);
  return `scribe: ${places.join(', ')} from its left end`;
}
