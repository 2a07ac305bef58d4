/** Which days are worked on, and when goods come. */
import type { DayNumber } from '../takeoff/text/calendar';

export type WorkDays = 'Monday to Friday' | 'Saturdays too' | 'every day';

const DAYS_A_WEEK: Readonly<Record<WorkDays, number>> = { 'Monday to Friday': 5, 'Saturdays too': 6, 'every day': 7 };

/** Day 0 was a Thursday. */
const [SATURDAY, SUNDAY] = [2, 3];

/** Whether people work on a day; holidays are not known here. */
export function isWorkDay(day: DayNumber, workDays: WorkDays): boolean {
  if (workDays === 'every day') return true;
  const weekday = weekdayOf(day);
  return weekday !== SUNDAY && (weekday !== SATURDAY || workDays === 'Saturdays too');
}

/** The day itself if it is worked on, else the last one before it that is. */
export function workDayUpTo(day: DayNumber, workDays: WorkDays): DayNumber {
  return isWorkDay(day, workDays) ? day : workDayUpTo(day - 1, workDays);
}

/** As `workDayUpTo`, and never a Sunday: nothing is delivered or sold then (common practice). */
export function shopDayUpTo(day: DayNumber, workDays: WorkDays): DayNumber {
  return workDayUpTo(day, workDays === 'every day' ? 'Saturdays too' : workDays);
}

/**
 * The last of so many days of work.
 *
 * @param start counts as the first of them whatever day it is: the person named it
 * @param count whole, from 1 up
 */
export function lastWorkDay(start: DayNumber, count: number, workDays: WorkDays): DayNumber {
  const aWeek = DAYS_A_WEEK[workDays];
  const weeks = Math.floor((count - 1) / aWeek);
  let day = start + 7 * weeks;
  if (weeks > 0 && (count - 1) % aWeek === 0) return workDayUpTo(day, workDays);
  for (let left = (count - 1) % aWeek; left > 0; left--) {
    day++;
    while (!isWorkDay(day, workDays)) day++;
  }
  return day;
}

function weekdayOf(day: DayNumber): number {
  return ((day % 7) + 7) % 7;
}
