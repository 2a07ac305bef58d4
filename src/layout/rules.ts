/**
 * Every trade rule: its name as a person types it, its default in each system, and where the default comes from.
 * The product's own instructions come before all of them.
 */
import { type Ticks, ticksOfInches, ticksOfMm } from '../geometry/length';

/** The rules of one floor, ticks unless said otherwise. */
export interface Rules {
  /** Space kept free at every wall, cut-out and jamb. */
  readonly expansionGap: Ticks;
  /** Least distance of end joints in neighbouring rows; exactly this is far enough. */
  readonly minStagger: Ticks;
  /** Least length of a first or last piece of a run longer than a plank; exactly this is long enough. */
  readonly minPiece: Ticks;
  /** Least width of a ripped first or last row; exactly this is wide enough. */
  readonly minRip: Ticks;
  /** Width of the saw cut. */
  readonly kerf: Ticks;
  /**
   * How much longer than drawn a piece that ends at a wall may turn out: room kept on its plank, unless it is the first
   * piece of the plank that is laid.
   */
  readonly play: Ticks;
  /** Joints of rows i and i+2 nearer than this look aligned; they are avoided where that costs no plank. */
  readonly alignedDistance: Ticks;
  /** Cut lengths are planned in whole steps of this. */
  readonly markingStep: Ticks;
  readonly layDirection: LayDirection;
  /** Whole planks bought on top of those the plan uses. */
  readonly spare: number;
}

/** Rows along the room's length (x), its width (y), one of its walls (counted from 1), or turned by an angle. */
export type LayDirection =
  | { readonly along: 'length' | 'width' }
  | { readonly along: 'wall'; readonly wallNumber: number }
  /** Degrees anticlockwise from the room's length. */
  | { readonly along: 'angle'; readonly degrees: number };

export interface LengthRule {
  readonly key:
    | 'expansionGap'
    | 'minStagger'
    | 'minPiece'
    | 'minRip'
    | 'kerf'
    | 'play'
    | 'alignedDistance'
    | 'markingStep';
  /** The name typed in a `rules` range and shown in the sidebar. */
  readonly name: string;
  readonly us: Ticks;
  readonly metric: Ticks;
}

/** Common practice: a full-kerf carbide blade cuts about 1/8 in; trim is cut with the same saw. */
export const KERF_RULE: LengthRule = { key: 'kerf', name: 'kerf', us: ticksOfInches(1 / 8), metric: ticksOfMm(3) };

export const LENGTH_RULES: readonly LengthRule[] = [
  // Common practice: 1/4 to 1/2 in for floating floors; published values run from 1/4 in to 15 mm and grow with the span.
  { key: 'expansionGap', name: 'expansion gap', us: ticksOfInches(3 / 8), metric: ticksOfMm(10) },
  // Common practice: end joints at least 8 in apart. Source for planks 3 to 5 in wide: NWFA Installation Guidelines as
  // revised 2008, 8 to 10 in, as quoted by the association's technical advisor in a trade magazine.
  { key: 'minStagger', name: 'minimum stagger', us: ticksOfInches(8), metric: ticksOfMm(200) },
  // Common practice: no end piece under 8 in.
  { key: 'minPiece', name: 'minimum piece', us: ticksOfInches(8), metric: ticksOfMm(200) },
  // Common practice: no wall row under 2 in (50 mm).
  { key: 'minRip', name: 'minimum rip', us: ticksOfInches(2), metric: ticksOfMm(50) },
  KERF_RULE,
  // Our choice: walls bow and tapes sag by about so much, and a last piece is cut to what is measured. 0 for none.
  { key: 'play', name: 'play', us: ticksOfInches(1 / 4), metric: ticksOfMm(6) },
  // Our choice: nearer than this, joints two rows apart read as one line (the H pattern the trade avoids).
  { key: 'alignedDistance', name: 'aligned-joint distance', us: ticksOfInches(2), metric: ticksOfMm(50) },
  // Our choice: what a tape shows and a pencil marks.
  { key: 'markingStep', name: 'marking step', us: ticksOfInches(1 / 16), metric: ticksOfMm(1) },
];

/** Names of the rules that are not lengths. */
export const LAY_DIRECTION_RULE = 'lay direction';
export const SPARE_RULE = 'spare';

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
