/** A room of our own invention, to look at what the page does before anything is measured. */
import type { Units } from '../../geometry/length';
import { BLANK_RULES, blankOf, type RoomEntry } from '../../takeoff/entry';
import { CUTOUT_FIELDS, DOORWAY_FIELDS, PRODUCT_FIELDS } from '../../takeoff/entryFields';

/** A room with a hearth and a door, in the sizes of the units. */
export function exampleRoom(units: Units): RoomEntry {
  const isUs = units === 'us';
  const pick = (us: string, metric: string) => (isUs ? us : metric);
  return {
    name: 'Example room',
    units,
    shape: { kind: 'rectangle', length: pick(`13' 4"`, '4.06 m'), width: pick(`10' 9"`, '3.28 m') },
    bows: [],
    cutouts: [
      {
        ...blankOf(CUTOUT_FIELDS),
        wall: 1,
        along: pick(`4'`, '1.2 m'),
        length: pick(`4'`, '1.2 m'),
        depth: pick(`16"`, '400 mm'),
      },
    ],
    doorways: [{ ...blankOf(DOORWAY_FIELDS), wall: 3, along: pick(`2'`, '0.6 m'), width: pick('32"', '810 mm') }],
    product: {
      ...blankOf(PRODUCT_FIELDS),
      name: 'Harbour oak',
      plankLength: pick('48"', '1220 mm'),
      plankWidth: pick('7 1/2"', '190 mm'),
      planksPerBox: 10,
    },
    rules: BLANK_RULES,
  };
}
