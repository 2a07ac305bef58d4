import type { LibraryLocale } from './oSpreadsheetEngine';

const POINT = { thousandsSeparator: ',', decimalSeparator: '.', formulaArgSeparator: ',' };

/** How numbers and dates are typed in a spreadsheet of each locale, by the platform's name of it. */
export const LOCALES: Readonly<Record<string, LibraryLocale>> = {
  en_US: {
    ...POINT,
    name: 'United States',
    code: 'en_US',
    weekStart: 7,
    dateFormat: 'm/d/yyyy',
    timeFormat: 'hh:mm:ss a',
  },
  en_GB: {
    ...POINT,
    name: 'United Kingdom',
    code: 'en_GB',
    weekStart: 1,
    dateFormat: 'dd/mm/yyyy',
    timeFormat: 'hh:mm:ss',
  },
  de_DE: {
    name: 'Germany',
    code: 'de_DE',
    thousandsSeparator: '.',
    decimalSeparator: ',',
    formulaArgSeparator: ';',
    weekStart: 1,
    dateFormat: 'dd.mm.yyyy',
    timeFormat: 'hh:mm:ss',
  },
};

/** The locale of this name, or the default where there is none of it. */
export function localeNamed(name: string | null | undefined): string {
  return name && Object.hasOwn(LOCALES, name) ? name : 'en_US';
}
