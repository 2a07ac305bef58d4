/** What is entered twice in one job: the second of two lines for one thing would be dropped without a word. */
import type { Units } from '../geometry/length';
import type { Problem } from '../takeoff/result';
import { countryWords } from '../takeoff/text/countryWords';
import { nameKey } from '../takeoff/text/names';
import type { HouseFields } from './house';
import { houseProblems } from './houseProblems';

/** One line of a list, and what it is for; a blank `what` is for nothing yet. */
interface Line {
  readonly what: string;
  /** Field to tell it at. */
  readonly field: string;
  /** `Product 2` */
  readonly where: string;
}

/** Two lines for one product, two bars of one kind, two entries for one doorway. */
export function enteredTwice(house: HouseFields, units: Units): readonly Problem[] {
  const products = house.floors.map(({ product }, i): Line => {
    return { what: product, field: `floors.${i}.product`, where: `Product ${i + 1}` };
  });
  const bars = house.transitions.map(({ kind }, i): Line => {
    return { what: kind, field: `transitions.${i}.kind`, where: countryWords(`Bar ${i + 1}`, units) };
  });
  const doorways = house.doorways.map(({ room, doorway }, i): Line => {
    const what = nameKey(room) === '' ? '' : `${room}, doorway ${doorway}`;
    return { what, field: `doorways.${i}.doorway`, where: `Doorway ${i + 1}` };
  });
  return [products, bars, doorways].flatMap(repeatedIn);
}

function repeatedIn(lines: readonly Line[]): Problem[] {
  const keys = lines.map(({ what }) => nameKey(what));
  return lines.flatMap(({ what, field, where }, i) => {
    const first = keys.indexOf(keys[i]);
    if (keys[i] === '' || first === i) return [];
    return [{ field, text: houseProblems.enteredTwice(where, what, lines[first].where) }];
  });
}
