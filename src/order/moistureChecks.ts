/** Whether subfloor and planks are dry enough, by the product's own limit where it is entered. */
import { TICKS_PER_FOOT, type Ticks } from '../geometry/length';
import { numberText } from '../takeoff/text/numberText';
import type { BeforeLine } from './beforeLine';
import { type House, type LaidRoom, productTitle } from './house';

/** Source: two manufacturers' instructions, one of them citing the trade association: strip, and plank from 3 in. */
const STRIP_MOISTURE_DIFFERENCE = 4;
const PLANK_MOISTURE_DIFFERENCE = 2;
const PLANK_FROM: Ticks = TICKS_PER_FOOT / 4;
const WETTEST_WOOD_SUBFLOOR = 12;

/** Per cent of relative humidity stand far above this, per cent by weight (carbide method) far below. */
const BETWEEN_MEASURES = 15;

/** What is measured, and whether it fits. */
export function moistureLines(house: House, room: LaidRoom): readonly BeforeLine[] {
  if (house.site.subfloor === 'concrete') return [concreteLine(house, room)];
  return /wood/.test(room.takeoff.entry.product.kind) ? [woodLine(house, room)] : [];
}

function told(state: BeforeLine['state'], { product }: LaidRoom, text: string): BeforeLine {
  return { state, subject: 'Moisture', text: `${productTitle(product.name)}: ${text}` };
}

function points(difference: number): string {
  const shown = numberText(difference, 1);
  return `${shown} ${shown === '1' ? 'point' : 'points'}`;
}

function woodLine(house: House, room: LaidRoom): BeforeLine {
  const subfloor = house.site.subfloorMoisture;
  const { moisture } = room.terms;
  if (subfloor === null || moisture === null) {
    return told('ask', room, 'measure the subfloor and the planks, and enter both as percentages.');
  }
  const { mostApart, wettest } = woodLimits(house, room);
  const difference = Math.abs(subfloor - moisture);
  const found = `subfloor ${percentText(subfloor)}, planks ${percentText(moisture)}: ${points(difference)} apart`;
  if (wettest === null) return told('ask', room, `${found}. What its instructions allow is not entered.`);
  const limits = `${mostApart === null ? '' : `at most ${mostApart}; `}subfloor at most ${percentText(wettest)}`;
  const fits = subfloor <= wettest && (mostApart === null || difference <= mostApart);
  const wait = fits ? '' : ' Wait, dry the room, and measure again.';
  return told(fits ? 'do' : 'stop', room, `${found} (${limits}).${wait}`);
}

/** American figures in houses of feet and inches; elsewhere only what the product says. */
function woodLimits(
  { units }: House,
  { terms, product }: LaidRoom,
): { readonly mostApart: number | null; readonly wettest: number | null } {
  if (units === 'metric') return { mostApart: null, wettest: terms.subfloorLimit };
  const mostApart = product.plankWidth >= PLANK_FROM ? PLANK_MOISTURE_DIFFERENCE : STRIP_MOISTURE_DIFFERENCE;
  return { mostApart, wettest: terms.subfloorLimit ?? WETTEST_WOOD_SUBFLOOR };
}

/**
 * Concrete is judged by the product's or its adhesive's limit alone: they differ too much for one figure.
 *
 * Sources: a maker of meters gives 75 to 90 % relative humidity by product (ASTM F2170, probes in the slab); the data
 * sheet of a urethane adhesive 82 %. Germany measures by carbide: 2.0 % for cement screed under parquet, 1.8 % heated,
 * 0.5 and 0.3 % for calcium sulphate (a screed testing firm's table).
 */
function concreteLine({ units, site }: House, room: LaidRoom): BeforeLine {
  const measured = site.subfloorMoisture;
  const limit = room.terms.subfloorLimit;
  const way =
    units === 'us'
      ? 'with probes in the slab (ASTM F2170)'
      : 'the way its instructions ask (relative humidity, or carbide)';
  if (limit === null) {
    const found = measured === null ? `have the concrete measured ${way}` : `concrete at ${percentText(measured)}`;
    return told(
      'ask',
      room,
      `${found}; the most its instructions, or its adhesive's, allow is not entered. Limits differ by product.`,
    );
  }
  const most = `at most ${percentText(limit)}, as its instructions say`;
  if (measured === null) return told('ask', room, `have the concrete measured ${way}: ${most}.`);
  const found = `concrete at ${percentText(measured)} (${most})`;
  if (measured < BETWEEN_MEASURES !== limit < BETWEEN_MEASURES) {
    return told(
      'ask',
      room,
      `${found}. These are two different measures: relative humidity, and a share of the weight.`,
    );
  }
  if (measured <= limit) return told('do', room, `${found}.`);
  return told(
    'stop',
    room,
    `${found}. Let it dry, or seal it as the product's or adhesive's maker says, and measure again.`,
  );
}

function percentText(value: number): string {
  return `${numberText(value, 1)} %`;
}
