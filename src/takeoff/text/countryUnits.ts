import type { Units } from '../../geometry/length';

/**
 * How the code of a language and country ends where feet and inches are used: the United States, Liberia, Myanmar. From
 * memory of the Unicode locale data; elsewhere a person chooses.
 */
const FEET_AND_INCHES = /[_-](US|LR|MM)$/;

/** The units a page starts in. @param locale such as `en_US` or `en-US`; any other text is metric */
export function unitsOfLocale(locale: string): Units {
  return FEET_AND_INCHES.test(locale) ? 'us' : 'metric';
}
