/** Entries to start from: blanks everywhere, so that a test says only what it is about. */
import { BLANK_RULES, type RoomEntry } from '../../src/takeoff/entry';

/** A 12 ft by 10 ft room, planks 48 in by 6 in, everything else as the defaults have it. */
export const plainRoom: RoomEntry = {
  name: 'Plain room',
  units: 'us',
  shape: { kind: 'rectangle', length: 12, width: 10 },
  bows: [],
  cutouts: [],
  doorways: [],
  product: {
    name: 'Harbour oak',
    kind: 'laminate',
    plankLength: 48,
    plankWidth: 6,
    thickness: '',
    planksPerBox: 8,
    boxCoverage: '',
    pricePerBox: '',
  },
  rules: BLANK_RULES,
};
