/**
 * What the trade says and spells in another way in America. Sentences and labels are written in British words and pass through
 * here before anything that a person typed is put into them; a house in feet and inches is all we know of its country.
 */

import type { Units } from '../../geometry/length';
import { capital } from './capital';

type Pair = readonly [british: string, american: string];

/** Whole words, longer ones first. Common practice, from pages of flooring dealers. */
const WORDS: readonly Pair[] = [
  ['vapour film', 'vapor barrier'],
  ['film', 'vapor barrier'],
  ['bars', 'transitions'],
  ['bar', 'transition'],
];
/** Spellings, wherever in a word. From memory of the usual dictionaries. */
const SPELLINGS: readonly Pair[] = [
  ['moulding', 'molding'],
  ['mitre', 'miter'],
  ['neighbour', 'neighbor'],
  ['acclimatise', 'acclimate'],
  ['bevelled', 'beveled'],
  ['grey', 'gray'],
  ['spoilt', 'spoiled'],
  ['metre', 'meter'],
  ['per cent', 'percent'],
];
const AMERICAN: ReadonlyMap<string, string> = new Map([...WORDS, ...SPELLINGS]);

const anyOf = (pairs: readonly Pair[]) => pairs.map(([british]) => british).join('|');
const BRITISH = new RegExp(`\\b(?:${anyOf(WORDS)})\\b|${anyOf(SPELLINGS)}`, 'gi');

/** Our own words as they are said where the units are used. */
export function countryWords(words: string, units: Units): string {
  if (units !== 'us') return words;
  return words.replace(BRITISH, (found) => {
    const said = AMERICAN.get(found.toLowerCase()) ?? found;
    return found === capital(found) ? capital(said) : said;
  });
}
