/** After which rows the days of a floor end, at the pace of whoever lays it, and what waits overnight. */
import { lastOf } from '../geometry/lists';
import type { FloorRow } from '../takeoff/result';

/** A day's work. */
export interface LayingDay {
  readonly dayNumber: number;
  readonly firstRow: number;
  readonly lastRow: number;
  /** Labels of the pieces that are cut off their planks by then: those of the next day, and those of later ones. */
  readonly forTomorrow: readonly string[];
  readonly forLater: readonly string[];
}

/** @param firstRow the first row that does not lie to its end; days count from it */
export function layingDays(
  { rows }: { readonly rows: readonly Pick<FloorRow, 'rowNumber' | 'waiting'>[] },
  firstRow: number,
  rowsADay: number,
): readonly LayingDay[] {
  const days: LayingDay[] = [];
  const last = lastOf(rows).rowNumber;
  for (let from = firstRow; from <= last; from += rowsADay) {
    const to = Math.min(last, from + rowsADay - 1);
    const waiting = rows.find(({ rowNumber }) => rowNumber === to)?.waiting ?? [];
    const isTomorrows = (label: string) => Number.parseInt(label.replace(/^.* /, ''), 10) <= to + rowsADay;
    days.push({
      dayNumber: days.length + 1,
      firstRow: from,
      lastRow: to,
      forTomorrow: waiting.filter(isTomorrows),
      forLater: waiting.filter((label) => !isTomorrows(label)),
    });
  }
  return days;
}

/** `Day 1: rows 7 to 12. Cut today for tomorrow: 13-1. Waits for later: 20-1.` */
export function dayWords({ dayNumber, firstRow, lastRow, forTomorrow, forLater }: LayingDay): string {
  const rows = firstRow === lastRow ? `row ${firstRow}` : `rows ${firstRow} to ${lastRow}`;
  const tomorrow = forTomorrow.length > 0 ? [`Cut today for tomorrow: ${forTomorrow.join(', ')}.`] : [];
  const later = forLater.length > 0 ? [`Waits for later: ${forLater.join(', ')}.`] : [];
  const nothing = forTomorrow.length + forLater.length === 0 ? ['No offcut waits overnight.'] : [];
  return [`Day ${dayNumber}: ${rows}.`, ...tomorrow, ...later, ...nothing].join(' ');
}
