/** What a person at the bench is told of an offcut and the place it is to go. */
import type { Ticks } from '../../geometry/length';
import type { FitFault, OffcutFit } from '../planning/offcutFit';

const OTHER = { left: 'right', right: 'left' } as const;

/** @param show a length as it is marked */
export function fitWords(fit: OffcutFit, minStagger: Ticks, show: (ticks: Ticks) => string): readonly string[] {
  const { label, needs, offcut, length, hasEnd, isTooNarrow, moved, elsewhere } = fit;
  const short = length - offcut;
  const other = elsewhere ? [`As it is, it serves as ${elsewhere.label}, ${show(elsewhere.length)} long.`] : [];
  if (isTooNarrow) return [`It is only ${show(fit.width ?? 0)} wide, too narrow for ${label}.`, ...other];
  if (!hasEnd && needs !== 'none') {
    const has = fit.ends === 'none' ? 'it has no factory end' : `it has only its ${fit.ends} end`;
    return [`${label} keeps a ${needs} factory end, and ${has}.`, ...other];
  }
  if (short <= 0) return [fitsWords(fit, show), ...keptWords(fit)];
  const first = `It is ${show(short)} too short for ${label}.`;
  if (needs === 'none') return [first, ...other];
  if (!moved)
    return [
      first,
      `No other first piece helps: an end would be too short, or a joint nearer than ${show(minStagger)}.`,
      ...other,
    ];
  const joint = moved.nearest === null ? '' : ` Joints stay ${show(moved.nearest)} or more from the rows beside.`;
  const change = `Begin the row with ${show(moved.first)} and end it with ${show(moved.last)}: then it fits.${joint}`;
  return [first, change, ...keptWords(fit), ...other];
}

function fitsWords({ label, needs, ends, offcut, length }: OffcutFit, show: (ticks: Ticks) => string): string {
  const over = offcut - length;
  const kept = needs === 'none' ? '' : ` Keep its ${needs} end`;
  if (over === 0) return `It fits ${label} as it is${needs === 'right' ? '' : ', with no room to grow'}.`;
  const cut = needs === 'none' ? ` Cut ${show(over)} off.` : `${kept}: cut ${show(over)} off the ${OTHER[needs]} end.`;
  const both = ends === 'both' && needs !== 'none' ? ' The rest still has the other factory end.' : '';
  const grow = needs === 'right' ? '' : ` It may grow by ${show(over)}.`;
  return `It fits ${label}.${cut}${both}${grow}`;
}

function keptWords({ keptFor }: OffcutFit): readonly string[] {
  if (keptFor === '') return [];
  return [`It is kept for ${keptFor}: type lost there under Mark and plan on, so that another is found for that one.`];
}

/** Why nothing can be told. */
export function fitFaultText(fault: FitFault, label: string, mark: string): string {
  if (fault === 'no such offcut') {
    return `No offcut marked ${mark} waits. Type what is written on it, or its length such as 14 3/8" with the ends it has.`;
  }
  if (fault === 'lies already') return `${label} is ticked as laid. Type a piece that is still to be laid.`;
  if (fault === 'whole plank') return `${label} is a whole plank: an offcut serves only at the ends of a row.`;
  return `The cut list has no piece ${label}. Type one as it stands there, such as 7-1.`;
}
