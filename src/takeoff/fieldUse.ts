/** The ways in which a field of an entry or of a job is read, shown and switched to other units. */
import type { Rule } from '../layout/rules';

/**
 * How a field is read. Lengths: `room` and `offset` (to either side) are of the large kind, `plank` of the small; with a
 * mark they must be there and be above 0. `area` is an area, `wall` and `corner` their numbers, `turn` is R, L or degrees,
 * `words` is text whatever stands there, `list` a list of texts.
 *
 * Of a whole job only: `number` is one from 0 up, `fraction` a percentage below 100, `percent` one up to 100, which stays in
 * per cent, `markup` one up to 100 as a fraction, `species` a name or a coefficient, `degrees` a temperature.
 */
export type FieldUse =
  | Rule['use']
  | 'words'
  | 'room!'
  | 'offset'
  | 'plank!'
  | 'plank side'
  | 'area'
  | 'wall'
  | 'corner'
  | 'turn'
  | 'price'
  | 'list'
  | 'number'
  | 'fraction'
  | 'percent'
  | 'markup'
  | 'date'
  | 'species'
  | 'degrees';
