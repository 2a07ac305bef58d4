/** How much a board's width changes with its moisture. */

/** Moisture contents, per cent, between which the coefficients hold; both ends are inside. */
export const DRIEST_MOISTURE = 6;
export const WETTEST_MOISTURE = 14;

/** Above it nothing grows: the largest published coefficient is under 0.005. */
export const LARGEST_COEFFICIENT = 0.02;

/** Change of width per unit of width and per point of moisture. */
export interface MovementCoefficients {
  readonly species: string;
  /** Across the growth rings: boards sawn on the quarter. Null where the source gives none. */
  readonly radial: number | null;
  /** Along the growth rings: flat-sawn boards, which most flooring is. */
  readonly tangential: number;
}

/**
 * Species, radial and tangential coefficient in hundred-thousandths.
 *
 * Source: USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), Table 13-5, hardwoods; hard maple is the
 * trade's name for sugar maple. The last three (0 = no radial value): Agriculture Handbook 72 (1987), as quoted in a flooring association's technical publication.
 */
const SPECIES =
  'red alder 151 256,white ash 169 274,black ash 172 274,quaking aspen 119 234,American basswood 230 330,' +
  'American beech 190 431,paper birch 219 304,yellow birch 256 338,sweet birch 256 338,black cherry 126 248,' +
  'eastern cottonwood 133 327,American elm 144 338,pecan hickory 169 315,black locust 158 252,bigleaf maple 126 248,' +
  'red maple 137 289,silver maple 102 252,black maple 165 353,sugar maple 165 353,hard maple 165 353,red oak 158 369,white oak 180 365,' +
  'overcup white oak 183 462,sweetgum 183 365,black walnut 190 274,' +
  'true hickory 0 411,Douglas fir 0 267,southern yellow pine 0 265';

/**
 * Change of width between two moistures, in the unit of `width`; negative when the wood shrinks.
 *
 * Source: Wood Handbook, FPL-GTR-190, equation 13-2: width x coefficient x (moisture after - moisture before).
 *
 * @param moistureFrom per cent, 6 to 14; so is `moistureTo`
 */
export function widthChange(width: number, coefficient: number, moistureFrom: number, moistureTo: number): number {
  return width * coefficient * (moistureTo - moistureFrom);
}

/** Every species known, in the order of the table. */
export function speciesTable(): readonly MovementCoefficients[] {
  return SPECIES.split(',').map((line) => {
    const [, species, radial, tangential] = /^(.+) (\d+) (\d+)$/.exec(line) as RegExpExecArray;
    return { species, radial: Number(radial) / 1e5 || null, tangential: Number(tangential) / 1e5 };
  });
}

/** Whether a coefficient is one of the table: it holds for solid wood alone. */
export function isOfSolidWood(coefficient: number): boolean {
  return speciesTable().some(({ radial, tangential }) => coefficient === radial || coefficient === tangential);
}

/**
 * The coefficient of a species named in any order and case: `White oak`, `oak, white`, `cherry`; `radial`,
 * `quarter-sawn` asks for the radial one, anything else is taken as flat-sawn.
 *
 * A name that fits several species (`maple`) is not guessed: the answer is the list of them, empty when none fits.
 */
export function coefficientOf(name: string): number | readonly string[] {
  const words = name.toLowerCase().match(/[a-z]+/g) ?? [];
  const isRadial = words.some((word) => RADIAL_WORDS.includes(word));
  const wanted = words.filter((word) => !RADIAL_WORDS.includes(word) && !OTHER_WORDS.includes(word));
  const fits = speciesTable().filter(({ species }) => {
    const known = species.toLowerCase().split(' ');
    return wanted.length > 0 && wanted.every((word) => known.includes(word));
  });
  const exact = fits.filter(({ species }) => species.split(' ').length === wanted.length);
  const found = fits.length === 1 ? fits : exact;
  if (found.length !== 1) return fits.map(({ species }) => species);
  return (isRadial ? found[0].radial : found[0].tangential) ?? [];
}

const RADIAL_WORDS = ['radial', 'quartersawn', 'quarter'];
const OTHER_WORDS = ['tangential', 'flatsawn', 'flat', 'plain', 'plainsawn', 'sawn', 'commercial', 'wood'];
