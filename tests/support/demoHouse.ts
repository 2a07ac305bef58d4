/**
 * An invented small house with the rooms of the demo workbook's estimating sheet, an invented job and invented prices,
 * everything filled in. Every private figure differs from every other number of the job, so that one found on the
 * homeowner's page is one that leaked.
 */

import { blankItem, emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import type { ProductEntry, RoomEntry, RulesEntry } from '../../src/takeoff/entry';
import { DEMO_ROOM, DEMO_WALLS } from '../../src/workbook/demoRoom';
import { doorwayIn } from './bareTakeoff';

const RULES: RulesEntry = {
  ...DEMO_ROOM.rules,
  expansionGap: '3/8"',
  minStagger: '8"',
  minPiece: '8"',
  kerf: '1/8"',
  play: 0,
};

const LAMINATE: ProductEntry = {
  name: 'Harbour oak',
  kind: 'laminate',
  plankLength: '47 1/4"',
  plankWidth: '7 1/2"',
  thickness: '5/16"',
  planksPerBox: 10,
  boxCoverage: '',
  pricePerBox: 52.93,
};

const ENGINEERED: ProductEntry = {
  name: 'Ferry ash',
  kind: 'engineered wood',
  plankLength: '48"',
  plankWidth: '5"',
  thickness: '1/2"',
  planksPerBox: 12,
  boxCoverage: '',
  pricePerBox: 118.37,
};

export const demoRooms: readonly RoomEntry[] = [
  {
    name: 'Bedroom',
    units: 'us',
    shape: { kind: 'rectangle', length: `12' 6"`, width: `11' 3 1/2"` },
    bows: [],
    cutouts: [],
    doorways: [doorwayIn(3, `1' 2"`, `2' 8"`)],
    product: LAMINATE,
    rules: RULES,
  },
  {
    name: 'Study',
    units: 'us',
    shape: { kind: 'rectangle', length: `9' 8"`, width: `8' 1"` },
    bows: [],
    cutouts: [],
    doorways: [doorwayIn(4, `2'`, `2' 6"`)],
    product: ENGINEERED,
    rules: RULES,
  },
  {
    name: 'Living room with closet',
    units: 'us',
    shape: {
      kind: 'walls in order',
      diagonals: [],
      walls: DEMO_WALLS.map(([length, turn]) => ({ length, turn })),
    },
    bows: [],
    cutouts: [],
    doorways: [doorwayIn(1, `3'`, `2' 8"`), doorwayIn(10, `4'`, `3'`)],
    product: LAMINATE,
    rules: { ...RULES, spare: 2 },
  },
];

const [bedroom] = demoRooms;

/** The same house with two rooms more. */
export const fiveRooms: readonly RoomEntry[] = [
  ...demoRooms,
  { ...bedroom, name: 'Nursery', shape: { kind: 'rectangle', length: `11'`, width: `9' 7"` } },
  { ...bedroom, name: 'Hall', shape: { kind: 'rectangle', length: `14' 2"`, width: `4' 3"` }, doorways: [] },
];

/** Suppliers are invented too. */
const YARD = { supplier: 'Example Timber Yard', article: '' };
const HARDWARE = { supplier: 'Invented Hardware', article: 'N-100' };

export const demoJob: HouseEntry = {
  ...emptyHouse('us'),
  currency: '$',
  floors: [
    {
      ...blankItem('floors'),
      product: 'harbour oak',
      misCuts: '4%',
      keep: 3,
      acclimatise: 48,
      flatness: `3/16" in 10'`,
      fastening: 'floating',
      film: 'yes',
      supplier: YARD.supplier,
      article: 'HO-8',
      lot: 'B27',
      boxWeight: 33,
    },
    {
      ...blankItem('floors'),
      product: 'Ferry ash',
      misCuts: 5,
      keep: 1,
      underlay: 'none',
      film: 'no',
      fastening: 'glued',
      acclimatise: 72,
      species: 0.00112,
      moisture: 7.5,
    },
  ],
  underlay: {
    name: 'Felt underlay',
    width: `3' 4"`,
    length: 30,
    overlap: '',
    direction: '',
    thickness: '1/8"',
    price: 33.71,
    ...YARD,
  },
  film: { name: 'Vapour film', width: 6, length: 60, overlap: '', direction: '', thickness: '', price: 27.19, ...YARD },
  adhesive: {
    name: 'Wood adhesive',
    coverage: 45,
    trowel: '1/4" square notch',
    allowance: 5,
    price: 58.83,
    ...HARDWARE,
  },
  tape: { name: 'Seam tape', length: 150, allowance: '6%', price: 13.67, ...YARD },
  trims: [
    {
      ...blankItem('trims'),
      name: 'Quarter round',
      stockLength: 8,
      thickness: '3/4"',
      height: 0,
      spare: 1,
      price: 9.43,
    },
    { ...blankItem('trims'), name: 'Baseboard', buy: 'put back', height: '3 1/2"' },
  ],
  transitions: [
    { kind: 'T-molding', stockLength: 6, price: 21.47, ...HARDWARE },
    { kind: 'reducer', stockLength: 6, price: 23.83, ...HARDWARE },
    { kind: 'end cap', stockLength: 6, price: 19.27, ...HARDWARE },
  ],
  doorways: [
    { ...blankItem('doorways'), room: 'Bedroom', doorway: 1, neighbour: 'Living room with closet', doorBottom: '5/8"' },
    { ...blankItem('doorways'), room: 'Living room with closet', doorway: 1, neighbour: 'Bedroom' },
    {
      ...blankItem('doorways'),
      room: 'Living room with closet',
      doorway: 2,
      neighbour: 'the porch',
      neighbourHeight: '1/8"',
      thresholdTop: '1 1/4"',
    },
    {
      ...blankItem('doorways'),
      room: 'Study',
      doorway: 1,
      neighbour: 'hall carpet',
      neighbourHeight: '1/2"',
      soft: 'yes',
      doorBottom: '1 1/8"',
    },
  ],
  appliances: [{ name: 'Fridge', room: 'Living room with closet', opening: '70 1/4"', height: '69 3/4"' }],
  stairs: [{ name: 'Stair to the loft', room: 'Study', floorAt: 'foot', riser: '7 1/2"', others: '7 1/2"' }],
  spacers: { apart: '12"', perPack: 40, price: 7.91, ...HARDWARE },
  extras: [{ name: 'Waste container', quantity: 1, unit: 'piece', price: 87.53, ...HARDWARE }],
  site: {
    subfloor: 'wood',
    subfloorMoisture: 9,
    temperature: 70,
    humidityLow: 35,
    humidityHigh: 60,
    builtYear: 1971,
    tearOut: ['Study'],
    asbestosTest: '',
    leadTest: '',
    casingWidth: '5"',
    doorClearance: '',
  },
  labour: [
    { work: 'Lay floors', by: 'hour', rate: 47.59 },
    { work: 'Fit trim', by: 'trim', rate: 1.37 },
    { work: 'Shorten doors', by: 'door', rate: 28.61 },
  ],
  pace: {
    perRoom: 45,
    perRow: 7,
    perCut: 3.5,
    perNotch: 9,
    perDoorway: 22,
    perTrim: 4.2,
    perDoor: 18,
    perUnderlay: 12,
    perTearOut: 47,
  },
  terms: { tax: '8.25%', taxOn: 'materials', margin: 17.3, marginOf: 'cost' },
  schedule: { startDate: '2026-12-07', hoursPerDay: 7, people: 1, workDays: '', deliveryDays: 10 },
  homeowner: {
    title: 'New floors for the Example house',
    homeowner: 'A. Homeowner',
    place: '1 Invented Lane',
    layer: 'Sample Floors, call 555-0100',
    letterhead: ['Sample Floors', '2 Invented Road, call 555-0100'],
    quoteNumber: 'Q-2026-14',
    quoteDate: '2026-11-30',
    showPrice: '',
    priceAs: '',
    deposit: 25,
    payment: ['The rest within two weeks of the last day.'],
    included: ['Sweeping up.'],
    validUntil: '2026-12-31',
    prepare: ['Empty the closet.'],
    notIncluded: ['Painting.', '=Moving pianos'],
    remarks: ['Shoes off for the first day, please.'],
  },
};
