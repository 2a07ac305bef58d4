/**
 * Lines that most jobs have, put in at a press and to be looked over: sizes are common practice, and nothing has a price
 * or a rate, so that each of them is told as missing until it is priced or taken out. Data only.
 */

import type { Units } from '../../geometry/length';
import { blankItem, type HouseEntry } from '../../order/houseEntry';
import { countryWords } from '../../takeoff/text/countryWords';

/** Parts of the job that have usual lines, and the words of the button. */
export const USUAL: Readonly<Record<string, string>> = {
  underlay: 'Usual roll',
  film: 'Usual roll',
  felt: 'Usual roll',
  trims: 'Usual trim',
  transitions: 'Usual bars',
  labour: 'Usual work',
};

const ROLLS = {
  // Common practice: rolls of 100 sq ft, 10 m2; film of 0.15 to 0.2 mm.
  underlay: { us: [`3' 4"`, `30'`], metric: ['1 m', '10 m'] },
  film: { us: [`10'`, `50'`], metric: ['2 m', '25 m'] },
  felt: { us: [`36"`, `100'`], metric: ['1 m', '30 m'] },
} as const;

/** The job with the usual lines of a part behind those it has; a roll whose size is typed stays as it is. */
export function withUsual(job: HouseEntry, at: string): HouseEntry {
  const { units } = job;
  switch (at) {
    case 'underlay':
    case 'film':
    case 'felt': {
      const [width, length] = ROLLS[at][units];
      const roll = job[at];
      const isBlank = String(roll.width) === '' && String(roll.length) === '';
      return isBlank ? { ...job, [at]: { ...roll, width, length } } : job;
    }
    case 'trims':
      return { ...job, trims: [...job.trims, ...usualTrims(units)] };
    case 'transitions':
      return { ...job, transitions: [...job.transitions, ...usualBars(units)] };
    case 'labour':
      return { ...job, labour: [...job.labour, ...usualWork(units)] };
    default:
      return job;
  }
}

function usualTrims(units: Units): HouseEntry['trims'] {
  const [covering, wall, stockLength] =
    units === 'us' ? ['Quarter round', 'Baseboard', `8'`] : ['Quadrant', 'Skirting', '2.4 m'];
  return [
    { ...blankItem('trims'), name: covering, stockLength, height: 0 },
    { ...blankItem('trims'), name: wall, buy: 'put back' },
  ];
}

/** By the names that the heights ask for. */
function usualBars(units: Units): HouseEntry['transitions'] {
  const stockLength = units === 'us' ? `6'` : '0.9 m';
  const kinds = ['T-moulding', 'reducer', 'end cap'].map((kind) => countryWords(kind, units));
  return kinds.map((kind) => ({ ...blankItem('transitions'), kind, stockLength }));
}

function usualWork(units: Units): HouseEntry['labour'] {
  const work: readonly (readonly [string, HouseEntry['labour'][number]['by']])[] = [
    ['Lay the floor', 'area'],
    ['Fit the trim', 'trim'],
    ['Shorten doors', 'door'],
    ['Take up the old floor', 'old floor'],
    ['Take the old floor away', 'job'],
    [units === 'us' ? 'Level the subfloor' : 'Level the screed', 'job'],
    ['Delivery', 'job'],
  ];
  return work.map(([name, by]) => ({ ...blankItem('labour'), work: name, by }));
}
