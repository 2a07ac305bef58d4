/** What fields of several parts of a job have in common. */
import type { Ticks } from '../geometry/length';
import type { EntryField } from '../takeoff/entryFields';

type Choices<Value extends string> = readonly (readonly [value: Value, words: string])[];

/** A choice of these, each called what it is. */
export const oneOf = <const Value extends string>(...values: readonly Value[]): Choices<Value> =>
  values.map((value) => [value, value]);
/** The same, or nothing. */
export const orNotSaid = <const Value extends string>(...values: readonly Value[]): Choices<Value | ''> => [
  ['', 'not said'],
  ...oneOf(...values),
];
/** The same, with what a blank means. */
export const usually = <const Value extends string>(
  usual: string,
  ...values: readonly Value[]
): Choices<Value | ''> => [['', `${usual} (usual)`], ...oneOf(...values)];

/** How the names in one field are told apart. */
export const LIST_HELP = 'Put a semicolon between them.';

/** Who sells it, and under what number; for the purchase list. */
export const SOURCE = [
  { key: 'supplier', label: 'Supplier', use: 'words' },
  { key: 'article', label: 'Article number', use: 'words' },
] as const satisfies readonly EntryField[];

/** What is bought on a roll. @param lap what a blank overlap stands for, ticks */
export const rollFields = <const Name extends string>(name: Name, lap: readonly [us: Ticks, metric: Ticks]) =>
  [
    { key: 'name', label: 'Name', use: 'words', blank: name },
    // Room scale (feet, metres).
    { key: 'width', label: 'Width of the roll', use: 'room' },
    { key: 'length', label: 'Length of the roll', use: 'room' },
    // Plank scale. Blank: underlay is butted, film laps 8 in (200 mm).
    { key: 'overlap', label: 'Overlap', use: 'plank', blank: lap },
    // Strips along the room's length or width; blank = whichever takes less.
    { key: 'direction', label: 'Strips along the', use: 'choice', choices: orNotSaid('length', 'width') },
    // Plank scale; counts in the height of the floor. A blank of underlay is told as missing; film and felt are next to nothing.
    { key: 'thickness', label: 'Thickness', use: 'plank' },
    // Per roll.
    { key: 'price', label: 'Price of a roll', use: 'price' },
    ...SOURCE,
  ] as const satisfies readonly EntryField[];
