/** Words as an American dictionary and flooring dealers there have them; no label or help of a form in feet is British. */
import { expect, test } from 'vitest';
import { HOUSE_SECTIONS, houseLabel } from '../../../src/order/houseFields';
import { jobFormField } from '../../../src/sidebar/form/job';
import { countryWords } from '../../../src/takeoff/text/countryWords';

// Merriam-Webster: neighbor, molding, miter, vapor, acclimate, beveled, gray, meter, percent, spoiled. Common practice: transition.
test.each([
  ['Neighbouring floor', 'Neighboring floor'],
  ['T-moulding', 'T-molding'],
  ['no vapour film is entered', 'no vapor barrier is entered'],
  ['Bars at doorways', 'Transitions at doorways'],
  ['a bare number is in millimetres, bars in metres', 'a bare number is in millimeters, transitions in meters'],
  ['Acclimatise, bevelled, grey', 'Acclimate, beveled, gray'],
  ['Planks spoilt so far', 'Planks spoiled so far'],
  ['vapor barrier', 'vapor barrier'],
])('%s is %s in feet and inches', (british, american) => {
  expect(countryWords(british, 'us')).toBe(american);
  expect(countryWords(british, 'metric')).toBe(british);
});

test('every label and help of the job reads American in feet, and is found again in the tab whichever way it is written', () => {
  const british = /our(?!s|\b|ce|th|n)|mould|mitre|isation|acclimatise|metre|grey|per cent/i;
  for (const section of HOUSE_SECTIONS) {
    for (const field of section.fields) {
      const { label, help = '' } = jobFormField(field, 'us');
      expect([houseLabel(section, field, 1, 'us'), label, help].filter((text) => british.test(text))).toEqual([]);
    }
  }
});
