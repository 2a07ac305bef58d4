/**
 * Every trade rule, declared once: what it is called, how it is read, what a blank means, and where that comes from. The
 * form, the `Rooms` tab, the `rules` range, room files and the README's table follow from here. The product's own
 * instructions come before all of them.
 */
import { type Ticks, ticksOfInches, ticksOfMm, type Units } from '../geometry/length';

/** Rows lengthwise, across that, half way between the two long walls, along one of the walls (counted from 1), or turned by an angle. */
export type LayDirection =
  | { readonly along: 'length' | 'width' | 'shared taper' }
  | { readonly along: 'wall'; readonly wallNumber: number }
  /** Degrees anticlockwise from wall 1 as drawn. */
  | { readonly along: 'angle'; readonly degrees: number };

/** A long edge of a plank. */
export type LongEdge = 'tongue' | 'groove';

/**
 * One rule: a field of every room, and where `inRange` is set a line that may stand in a `rules` range.
 */
export interface Rule {
  readonly key: string;
  /** What a person reads. */
  readonly label: string;
  /** What the form calls it where that is shorter or says more. */
  readonly formLabel?: string;
  /**
   * How it is read: a length of the small kind (`plank`, `step`, `first row`, `gap by span`) or the large (`room`), a
   * count, a choice, or a lay direction.
   */
  readonly use: 'plank' | 'step' | 'first row' | 'gap by span' | 'room' | 'count' | 'choice' | 'direction';
  /** What a blank is read as: ticks in US and in metric units, or a count; without it a blank is read as null. */
  readonly blank?: readonly [us: Ticks, metric: Ticks] | number;
  /** The most that is taken, ticks or a count: more is a slip of units. */
  readonly most?: number;
  /** What a blank means, where it is read as no value of its own. */
  readonly hint?: string;
  /** Value and words of each choice; without words it is taken, but not offered: a default said outright. */
  readonly choices?: readonly (readonly [value: string, words: string])[];
  /** Of a choice that may also be typed. */
  readonly own?: { readonly words: string; readonly label: string };
  readonly help?: string;
  /** The name it goes by in a `rules` range; without it, it may not stand there. */
  readonly inRange?: string;
  /** Stands with the choices of laying in the form, not with the rules. */
  readonly isLaying?: true;
  readonly isWide?: true;
  /** Where the value comes from: a document with its clause, `common practice`, or `our choice` and the reason. */
  readonly source: string;
}

/** A length of its own in either kind of units: inches, and millimetres in a metric job. */
export const inches = (us: number, metric: number) => [ticksOfInches(us), ticksOfMm(metric)] as const;

/** Every rule, in the order in which it is shown. A rule that is added here is known everywhere. */
export const RULES = [
  {
    key: 'expansionGap',
    label: 'Expansion gap',
    use: 'plank',
    blank: inches(3 / 8, 10),
    // Published values end at about 15 mm, and 1.5 mm a metre over a hall of 40 m is 60: a 10 meant in mm is past it.
    most: ticksOfInches(3),
    help: 'Space kept free at every wall, cut-out and door jamb.',
    inRange: 'expansion gap',
    // 1/4 to 1/2 in for floating floors.
    source: 'common practice: published values run from 1/4" to 15 mm and more in wide rooms',
  },
  {
    key: 'minStagger',
    label: 'Minimum stagger',
    use: 'plank',
    blank: inches(8, 200),
    help: 'Least distance between end joints of rows side by side.',
    inRange: 'minimum stagger',
    source: `common practice; the National Wood Flooring Association's 2008 guidelines, as quoted in a trade magazine, have 8" to 10" for planks of 3" to 5"`,
  },
  {
    key: 'minPiece',
    label: 'Minimum piece',
    use: 'plank',
    blank: inches(8, 200),
    help: 'Shortest first or last piece of a row longer than a plank.',
    inRange: 'minimum piece',
    source: 'common practice; holds for first and last pieces of rows longer than a plank',
  },
  {
    key: 'minRip',
    label: 'Minimum rip',
    use: 'plank',
    blank: inches(2, 50),
    help: 'Narrowest row you would lay.',
    inRange: 'minimum rip',
    source: 'common practice',
  },
  {
    key: 'squareCut',
    label: 'Square-cut tolerance',
    use: 'plank',
    blank: inches(3 / 16, 5),
    // A tolerance wider than trim is a slip of units.
    most: ticksOfInches(1),
    help: 'Ends and edges out of square, or bent, by less are cut square; 0 cuts each to its angle.',
    source:
      'our choice: what a layer leaves to the gap under the trim rather than set the saw to an angle; 0 cuts every angle',
  },
  {
    key: 'trimCover',
    label: 'Trim covers',
    use: 'plank',
    blank: inches(3 / 4, 20),
    help: 'How far baseboard, shoe or casing reaches over the gap, from the wall.',
    source: 'common practice: quarter round and base shoe are 1/2" to 3/4" thick, baseboard alone about 1/2"',
  },
  {
    key: 'leastStrip',
    label: 'Least strip',
    use: 'plank',
    blank: inches(3 / 4, 20),
    help: 'Narrower strips are not made: left off under trim, or the first row is moved; 0 makes them all.',
    source:
      'our choice: a lock takes about 3/8" of each edge of a plank (common practice), so a narrower rip is all lock and cannot be held at the saw; 0 makes every strip',
  },
  {
    key: 'kerf',
    label: 'Kerf',
    use: 'plank',
    blank: inches(1 / 8, 3),
    // A chain saw cuts 10 mm: a 3 meant in mm and read as inches is past it.
    most: ticksOfMm(12.7),
    help: 'Width of the saw cut; 0 for score and snap.',
    inRange: 'kerf',
    source: 'common practice: the cut of a full-width carbide blade',
  },
  {
    key: 'play',
    label: 'Play',
    use: 'plank',
    blank: inches(1 / 4, 6),
    help: 'Room for a last piece to turn out longer than drawn; 0 for none.',
    inRange: 'play',
    source:
      'our choice: how much longer than drawn a last piece may turn out, measured in place. It is kept free on the plank where the piece is cut from what an earlier one left; 0 for none',
  },
  {
    key: 'alignedDistance',
    label: 'Aligned-joint distance',
    use: 'plank',
    blank: inches(2, 50),
    help: 'End joints two rows apart and nearer than this look like one line.',
    inRange: 'aligned-joint distance',
    source:
      'our choice: joints two rows apart and nearer than this look like one line; avoided where that costs no plank',
  },
  {
    key: 'markingStep',
    label: 'Marking step',
    use: 'step',
    blank: inches(1 / 16, 1),
    help: 'Pieces are cut to whole steps of this.',
    inRange: 'marking step',
    source: 'our choice: what a tape shows and a pencil marks',
  },
  {
    key: 'layDirection',
    label: 'Lay direction',
    use: 'direction',
    choices: [
      ['', 'along the length'],
      ['width', 'along the width'],
      ['shared', 'along the length, taper shared by both walls'],
      ['best', 'whichever way is best'],
    ],
    own: { words: 'along a wall, or at an angle', label: 'Wall or degrees' },
    help: 'Such as wall 3, or 45: degrees anticlockwise from wall 1.',
    inRange: 'lay direction',
    isLaying: true,
    isWide: true,
    source: '`length`, `width`, `shared`, `wall 3`, or degrees such as `45`',
  },
  {
    // The side of the floor as seen along the rows. `middle`: rows both ways from a line through a doorway that the
    // floor goes on through, or through the middle.
    key: 'startSide',
    label: 'First row lies',
    use: 'choice',
    choices: [
      ['', 'at the near side'],
      ['near', ''],
      ['far', 'at the far side'],
      ['middle', 'in the middle, rows both ways'],
      ['best', 'wherever is best'],
    ],
    help: 'With rows along the length, near is beside wall 3 and far beside wall 1.',
    isLaying: true,
    isWide: true,
    source: 'our choice',
  },
  {
    // Blank: a full plank unless the last row would be under the minimum rip.
    key: 'firstRow',
    label: 'First row width',
    use: 'first row',
    choices: [
      ['', 'a full plank, unless the last is a sliver'],
      ['best', 'whichever width is best'],
    ],
    own: { words: 'ripped to a width of my own', label: 'My own width' },
    isLaying: true,
    isWide: true,
    source: 'common practice: no sliver at either wall',
  },
  {
    key: 'startEdge',
    label: 'Edge at the start wall',
    use: 'choice',
    choices: [
      ['', 'the tongue'],
      ['tongue', ''],
      ['groove', 'the groove'],
    ],
    help: 'As the lock wants it; from a middle line the grooves meet.',
    isLaying: true,
    isWide: true,
    source: 'common practice: the tongue; published guides contradict each other, since it depends on the lock',
  },
  {
    key: 'reuseStrips',
    label: 'Strips of the first row in the last',
    formLabel: 'What is ripped off the first row',
    use: 'choice',
    choices: [
      ['', 'goes into the last row where it fits'],
      ['yes', ''],
      ['no', 'is waste'],
    ],
    help: 'A strip that keeps its lock can be the last row.',
    isLaying: true,
    isWide: true,
    source: 'our choice: a strip that keeps its lock may be the last row',
  },
  {
    key: 'aim',
    label: 'Plan for',
    use: 'choice',
    choices: [
      ['', 'the fewest planks'],
      ['easy', 'the easiest laying, in the boxes bought'],
    ],
    help: 'Easiest: as few offcuts waiting as can be, with no box more than the fewest planks need, unless more than three would wait.',
    isLaying: true,
    isWide: true,
    source: 'our choice: a plank saved from a box that is bought anyway saves nothing',
  },
  {
    key: 'spare',
    label: 'Spare planks',
    use: 'count',
    blank: 0,
    help: 'On top of the plan: planks break, and repairs come.',
    // A truck load.
    most: 10_000,
    inRange: 'spare',
    source: 'whole planks on top',
  },
  {
    key: 'longestAlong',
    label: 'Longest floor along the rows',
    use: 'room',
    hint: 'by kind',
    help: 'As the product says; a longer floor needs an expansion joint.',
    isWide: true,
    source: 'the product; see `RUN_LIMITS`',
  },
  {
    key: 'longestAcross',
    label: 'Longest floor across the rows',
    use: 'room',
    hint: 'by kind',
    help: 'As the product says; a longer floor needs an expansion joint.',
    isWide: true,
    source: 'the product; see `RUN_LIMITS`',
  },
  {
    key: 'gapBySpan',
    label: 'Gap by span',
    use: 'gap by span',
    hint: 'none',
    isWide: true,
    help: 'For each 10 ft (metre) of floor across the rows, where that is more than the expansion gap.',
    source: "the product's own instructions",
  },
] as const satisfies readonly Rule[];

type AnyRule = (typeof RULES)[number];
export type RuleKey = AnyRule['key'];

/** Rules that are lengths with a default. */
export type LengthRuleKey = Extract<AnyRule, { readonly blank: readonly [Ticks, Ticks] }>['key'];

/** Rules that are counted. */
export type CountRuleKey = Extract<AnyRule, { readonly use: 'count' }>['key'];

/** The rules of one floor: lengths in ticks, and counts; exactly the least that a rule asks is enough. */
export interface Rules extends Readonly<Record<LengthRuleKey, Ticks>>, Readonly<Record<CountRuleKey, number>> {
  readonly layDirection: LayDirection;
}

/** The most that a rule may ask, ticks. */
export function mostOf(key: 'expansionGap' | 'kerf'): Ticks {
  return RULES.flatMap((rule) => (rule.key === key && 'most' in rule ? [rule.most] : []))[0];
}

/** A length that a rule has when nothing is said, ticks. */
export function usualLength(key: LengthRuleKey, units: Units): Ticks {
  const { blank } = RULES.filter(
    (rule): rule is Extract<AnyRule, { readonly key: LengthRuleKey }> => rule.key === key,
  )[0];
  return blank[units === 'us' ? 0 : 1];
}

/** How far a floor of a kind may run without an expansion joint; null = no limit of its own. */
export interface RunLimitRule {
  readonly along: Ticks | null;
  readonly across: Ticks | null;
  /** What the published figures span, and for whom. */
  readonly range: string;
}

/**
 * Defaults only: published figures differ between makers, and the product's own instructions decide.
 */
export const RUN_LIMITS: Readonly<Record<'laminate' | 'engineered wood' | 'solid wood' | 'rigid vinyl', RunLimitRule>> =
  {
    // Common practice: laminate makers' instructions give 12 m along and 8 m across; others say 8 m or 13 m either way.
    laminate: { along: ticksOfMm(12_000), across: ticksOfMm(8_000), range: '8 to 13 m' },
    // Common practice: floating wood floors 25 to 30 ft, as wood-floor retailers advise; the lower figure is taken.
    'engineered wood': { along: ticksOfInches(300), across: ticksOfInches(300), range: '25 to 30 ft' },
    // Common practice: as for engineered across the boards; along the grain wood hardly moves.
    'solid wood': { along: null, across: ticksOfInches(300), range: '25 to 30 ft across' },
    // Source: a rigid-core maker's manual, revision of 27 June 2022, p. 6: 85 ft either way, 30 ft in rooms that are not
    // kept at room temperature.
    'rigid vinyl': { along: ticksOfInches(1020), across: ticksOfInches(1020), range: '85 ft; 30 ft in unheated rooms' },
  };
