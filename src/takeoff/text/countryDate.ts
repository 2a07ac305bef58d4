/** Dates as a country writes them, by the locale of its spreadsheets (`de_DE`). Weekdays and months are in English. */
import { type DayNumber, isoText, weekdayText } from './calendar';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/**
 * Patterns by the locales that have them; a language stands for all its countries that are not listed.
 *
 * Source: Unicode CLDR, as the test reads it from the runtime. In English the month is a word, so that 7/12 cannot be
 * read as 12/7.
 */
const PATTERNS: Readonly<Record<string, string>> = {
  'M D, Y': 'en_US en_CA',
  'D M Y': 'en',
  'dd/mm/y': 'fr it es pt nl_BE el id vi',
  'dd.mm.y': 'de fr_CH it_CH da nb no fi pl ro bg tr ru uk lv et iw he',
  'dd. mm. y': 'cs sk sl',
  'dd. mm. y.': 'hr',
  'dd-mm-y': 'nl',
  'y-mm-dd': 'sv lt fr_CA',
  'y/mm/dd': 'ja zh',
  'y. mm. dd.': 'ko hu',
};
const ANYWHERE = 'y-mm-dd';

/** `Mon, Dec 7, 2026`; `Mon 7 Dec 2026`; `Mon 07.12.2026`. A locale that is not known has `Mon 2026-12-07`. */
export function countryDay(day: DayNumber, locale: string): string {
  const pattern = patternOf(locale);
  return `${weekdayText(day)}${pattern.startsWith('M') ? ',' : ''} ${written(isoText(day), pattern)}`;
}

function patternOf(locale: string): string {
  const name = locale.replace('-', '_');
  const withPattern = (wanted: string) =>
    Object.keys(PATTERNS).find((pattern) => PATTERNS[pattern].split(' ').indexOf(wanted) >= 0);
  return withPattern(name) ?? withPattern(name.split('_')[0]) ?? ANYWHERE;
}

function written(iso: string, pattern: string): string {
  const [year, month, day] = iso.split('-');
  const parts: Readonly<Record<string, string>> = {
    y: year,
    Y: year,
    mm: month,
    M: MONTHS[Number(month) - 1],
    dd: day,
    D: String(Number(day)),
  };
  return pattern.replace(/mm|dd|[yYMD]/g, (part) => parts[part]);
}
