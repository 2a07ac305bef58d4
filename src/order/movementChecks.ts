/** How much the planks of a room move over the year, as far as anybody can say. */
import { inchesOf, mmOf, type Units } from '../geometry/length';
import { numberText } from '../takeoff/text/numberText';
import type { BeforeLine, BeforeState } from './beforeLine';
import type { House, LaidRoom } from './house';
import { moistureContent } from './moisture';
import { DRIEST_MOISTURE, isOfSolidWood, WETTEST_MOISTURE, widthChange } from './movement';

/**
 * One plank, and all rows together, between the driest and the dampest air of the year. Solid wood by its species;
 * engineered planks only by a coefficient of their maker's, for their cross layers hold them; laminate and rigid vinyl
 * by no coefficient of wood at all.
 */
export function movementLines(house: House, room: LaidRoom): readonly BeforeLine[] {
  const { species } = room.terms;
  const { kind } = room.takeoff.entry.product;
  if (kind === 'laminate' || kind === 'rigid vinyl') return species === null ? [] : [told('ask', room, NOT_WOOD[kind])];
  if (kind === 'engineered wood' && species !== null && isOfSolidWood(species)) {
    return [
      told(
        'ask',
        room,
        'that is the figure of solid wood. Engineered planks move less: type the coefficient of their maker.',
      ),
    ];
  }
  return species === null ? [] : reckonedLines(house, room, species);
}

/** Common practice: boards of wood fibre follow the humidity both ways, vinyl the temperature. */
const NOT_WOOD = {
  laminate:
    'coefficients of wood do not apply to laminate, which grows in length and width with humidity. Keep the gap its instructions ask for.',
  'rigid vinyl':
    'coefficients of wood do not apply to vinyl, which grows with warmth. Keep the gap its instructions ask for, more in the sun.',
} as const;

function told(state: BeforeState, { name }: LaidRoom, text: string): BeforeLine {
  return { state, subject: 'Movement', text: `${name}: ${text}` };
}

function reckonedLines(house: House, room: LaidRoom, coefficient: number): BeforeLine[] {
  const { temperature, humidityLow, humidityHigh } = house.site;
  if (temperature === null || humidityLow === null || humidityHigh === null) return [];
  const [dry, damp] = [humidityLow, humidityHigh].map((humidity) => moistureContent(temperature, humidity / 100));
  const span = `${numberText(dry, 1)} to ${numberText(damp, 1)} % moisture over the year`;
  if (dry < DRIEST_MOISTURE || damp > WETTEST_MOISTURE) {
    const range = `${DRIEST_MOISTURE} to ${WETTEST_MOISTURE} %`;
    return [told('ask', room, `${span}. The published coefficients hold from ${range} only.`)];
  }
  const across = room.takeoff.rows.reduce((width, row) => width + row.width, 0);
  const one = smallLengthText(widthChange(room.product.plankWidth, coefficient, dry, damp), house.units);
  const all = smallLengthText(widthChange(across, coefficient, dry, damp), house.units);
  return [
    told(
      'do',
      room,
      `${span}. A plank's width changes by ${one}, and all rows together by ${all} if nothing holds them.`,
    ),
  ];
}

/** Movement is finer than a tape: thousandths of an inch, tenths of a millimetre. */
function smallLengthText(ticks: number, units: Units): string {
  return units === 'us' ? `${numberText(inchesOf(ticks), 3)} in` : `${numberText(mmOf(ticks), 1)} mm`;
}
