import { expect, test } from 'vitest';
import { dayOf } from '../../../src/takeoff/text/calendar';
import { countryDay } from '../../../src/takeoff/text/countryDate';

const LOCALES = `de_DE de_AT fr_FR fr_BE fr_CH fr_CA it_IT it_CH es_ES es_MX pt_PT pt_BR nl_NL nl_BE da_DK nb_NO sv_SE
  fi_FI pl_PL cs_CZ sk_SK sl_SI hr_HR hu_HU ro_RO bg_BG el_GR tr_TR ru_RU uk_UA lt_LT lv_LV et_EE ja_JP zh_CN ko_KR id_ID
  vi_VN he_IL`.split(/\s+/);
const DAYS = ['2026-12-07', '2027-01-31', '2028-02-29'];

/** As the Unicode locale data of the runtime write it; the word for year behind a Bulgarian one is left off. */
function byRuntime(iso: string, locale: string, options: Intl.DateTimeFormatOptions): string {
  const date = new Date(`${iso}T00:00:00Z`);
  const shown = new Intl.DateTimeFormat(locale.replace('_', '-'), { ...options, timeZone: 'UTC' }).format(date);
  return shown.replace(/\s*г\.$/, '');
}

const dayIn = (iso: string, locale: string) => countryDay(dayOf(iso) as number, locale);

test.each(LOCALES)('a date in %s is written as the locale data say, behind an English weekday', (locale) => {
  for (const iso of DAYS) {
    const weekday = byRuntime(iso, 'en_US', { weekday: 'short' });
    const date = byRuntime(iso, locale, { year: 'numeric', month: '2-digit', day: '2-digit' });
    expect(dayIn(iso, locale)).toBe(`${weekday} ${date}`);
  }
});

test.each(['en_US', 'en_CA', 'en_IE', 'en-US'])('in English the month is a word: %s', (locale) => {
  for (const iso of DAYS) {
    const parts = { weekday: 'short', year: 'numeric', month: 'short', day: 'numeric' } as const;
    expect(dayIn(iso, locale)).toBe(byRuntime(iso, locale, parts));
  }
});

test('other English countries put the day first; an unknown locale has the date that every country can read', () => {
  expect(dayIn('2026-12-07', 'en_GB')).toBe('Mon 7 Dec 2026');
  expect(dayIn('2026-12-07', 'en_AU')).toBe('Mon 7 Dec 2026');
  for (const locale of ['', 'xx_XX']) expect(dayIn('2026-12-07', locale)).toBe('Mon 2026-12-07');
});
