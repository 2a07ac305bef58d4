/** Whether a product may be fastened as it is entered, and what the fastening still wants to know. */
import type { ProductKind } from '../takeoff/entry';
import { lengthText } from '../takeoff/text/lengthText';
import type { BeforeLine, BeforeState } from './beforeLine';
import { type House, type LaidRoom, productTitle } from './house';

/** What is wrong, or missing, about nails, glue and what lies under them. */
export function fasteningLinesOf(house: House, room: LaidRoom): readonly BeforeLine[] {
  const title = productTitle(room.product.name);
  const told: Told = (state, text) => ({ state, subject: 'Fastening', text: `${title}: ${text}` });
  const { fastening } = room.terms;
  if (fastening === 'nailed') return nailedLines(house, room, told);
  if (fastening === 'glued') return gluedLines(house, room, told);
  // Common practice: solid boards are nailed or glued, but for a few that lock.
  if (room.takeoff.entry.product.kind !== 'solid wood') return [];
  return [told('ask', 'solid wood is mostly nailed or glued; make sure its instructions allow it to float.')];
}

type Told = (state: BeforeState, text: string) => BeforeLine;

function nailedLines(house: House, { takeoff, underlay }: LaidRoom, told: Told): BeforeLine[] {
  const { kind } = takeoff.entry.product;
  return [
    // Common practice: planks that lock move as one sheet, and a nail pins it.
    ...(isWood(kind) ? [] : [told('stop', `${kind} is not nailed: it must be free to move as one.`)]),
    ...(house.site.subfloor === 'concrete'
      ? [told('stop', 'nails do not hold in concrete. Lay panels or sleepers on it first, or fasten another way.')]
      : []),
    // Source: Hardwood Floors, February 2017, page 52: foam is never recommended under nailed planks.
    ...(underlay
      ? [told('stop', 'nailed planks work loose on an underlay that gives. Felt or paper goes there.')]
      : []),
    nailLine(house, told),
  ];
}

/**
 * Published for comparison: a trade journal's field guide has nails every 8 to 12 in for strip under 4 in wide, and 8 in
 * at most for planks of 4 to 8 in, 1 to 3 in from the ends of each piece.
 */
function nailLine({ units, fasteners }: House, told: Told): BeforeLine {
  const { apart, name } = fasteners;
  if (apart)
    return told(
      'do',
      `${name.toLowerCase()} every ${lengthText(apart, units, 'piece')}, and near both ends of each piece.`,
    );
  const published =
    units === 'us' ? ' Published: every 8" to 12" for strip under 4" wide, 8" at most for wider planks.' : '';
  return told('ask', `how far apart its nails go is not entered; see its instructions.${published}`);
}

function gluedLines({ site, adhesive }: House, { takeoff, underlay }: LaidRoom, told: Told): BeforeLine[] {
  return [
    // Common practice: most laminate is laid floating only.
    ...(takeoff.entry.product.kind === 'laminate'
      ? [told('ask', 'most laminate is laid floating only; make sure its instructions allow glue.')]
      : []),
    ...(underlay
      ? [told('ask', 'underlay under glued planks must be one that planks and adhesive are both made for.')]
      : []),
    ...(adhesive.coverage
      ? []
      : [told('ask', 'what a pail of its adhesive covers, with which trowel, is not entered; see the label.')]),
    ...(site.subfloor === 'concrete'
      ? [
          told(
            'do',
            'nothing lies under glued planks: the adhesive or a primer keeps the damp back, as far as its label says.',
          ),
        ]
      : []),
  ];
}

function isWood(kind: ProductKind): boolean {
  return kind === 'solid wood' || kind === 'engineered wood';
}
