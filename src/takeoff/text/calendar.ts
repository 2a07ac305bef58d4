/** Plain calendar arithmetic on year, month and day, so that no clock and no time zone can shift a date. */

/** Days since 1 January 1970, negative before it. */
export type DayNumber = number;

const DAY_NAMES = ['Thu', 'Fri', 'Sat', 'Sun', 'Mon', 'Tue', 'Wed'];

/**
 * The day a text such as `2026-12-05` names, or null when it is not written so or there is no such day.
 *
 * The count of days is the usual shifted-year arithmetic of the Gregorian calendar (years begin in March, so that the
 * odd month comes last); years 1 to 9999.
 */
export function dayOf(text: string): DayNumber | null {
  const match = /^\s*(\d{4})-(\d{1,2})-(\d{1,2})\s*$/.exec(text);
  if (!match) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (year < 1 || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  const shiftedYear = month > 2 ? year : year - 1;
  const monthFromMarch = (month + 9) % 12;
  const dayOfYear = Math.floor((153 * monthFromMarch + 2) / 5) + day - 1;
  return 365 * shiftedYear + leapDaysUpTo(shiftedYear) + dayOfYear - 719_468;
}

/** `Sat` */
export function weekdayText(day: DayNumber): string {
  return DAY_NAMES[((day % 7) + 7) % 7];
}

/** `2026-12-05` */
export function isoText(day: DayNumber): string {
  // A year of the Gregorian calendar has 365.2425 days: the guess is this year or the one before.
  let year = 1969 + Math.floor(day / 365.2425);
  while (firstDayOf(year + 1) <= day) year++;
  let left = day - firstDayOf(year);
  let month = 1;
  while (left >= daysInMonth(year, month)) {
    left -= daysInMonth(year, month);
    month++;
  }
  return `${padded(year, 4)}-${padded(month, 2)}-${padded(left + 1, 2)}`;
}

function firstDayOf(year: number): DayNumber {
  return 365 * (year - 1970) + leapDaysUpTo(year - 1) - leapDaysUpTo(1969);
}

function leapDaysUpTo(year: number): number {
  return Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return leapDaysUpTo(year) > leapDaysUpTo(year - 1) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

function padded(value: number, digits: number): string {
  return `000${value}`.slice(-digits);
}
