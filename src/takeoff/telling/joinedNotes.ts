/** In words: what was typed in a room but is not used, because the room is laid as one floor with others. */
import type { Ticks } from '../../geometry/length';
import { type CountRuleKey, type LengthRuleKey, RULES } from '../../layout/rules';
import type { RulesEntry, Typed } from '../entry';
import type { DrawnRoom } from '../reading/drawnRoom';
import { lengthText } from '../text/lengthText';
import { sameName } from '../text/names';

type Show = (length: Ticks) => string;
type Read = Pick<DrawnRoom, 'entry' | 'read'>;

/** A sentence for each room of a joined floor that has a product or rules of its own; none for a room laid alone. */
export function joinedNotes(floor: Read & Pick<DrawnRoom, 'others'>): readonly string[] {
  const { first, rest } = floor.others ?? { first: floor, rest: [] };
  const show: Show = (length) => lengthText(length, floor.read.units, 'piece');
  return rest.flatMap((other) => {
    const unused = [...productOf(other, first, show), ...rulesOf(other, first, show), ...layingOf(other, first)];
    if (unused.length === 0) return [];
    return [
      `As one floor, ${other.entry.name} is laid with the product and rules of ${first.entry.name}. What was typed in ${other.entry.name} is not used: ${unused.join(', ')}.`,
    ];
  });
}

function productOf(other: Read, first: Read, show: Show): string[] {
  const [own, used] = [other.read.product, first.read.product];
  const found: string[] = [];
  if (own.name.trim() !== '' && !sameName(own.name, used.name)) found.push(`product ${own.name}`);
  if (other.entry.product.kind !== first.entry.product.kind) found.push(`kind ${other.entry.product.kind}`);
  if (own.thickness > 0 && own.thickness !== used.thickness) found.push(`plank thickness ${show(own.thickness)}`);
  if (own.planksPerBox !== null && own.planksPerBox !== used.planksPerBox)
    found.push(`${own.planksPerBox} planks in a box`);
  if (own.pricePerBox !== null && own.pricePerBox !== used.pricePerBox) {
    found.push(`price of a box ${other.entry.product.pricePerBox}`);
  }
  return found;
}

/** Rules that are lengths with a default, and their names within a sentence. */
const LENGTH_RULES: readonly (readonly [key: LengthRuleKey, name: string])[] = RULES.flatMap((rule) =>
  'blank' in rule && typeof rule.blank === 'object' ? [[rule.key, rule.label.toLowerCase()] as const] : [],
);

/** Rules that are counted, by the names they have in a `rules` range. */
const COUNT_RULES: readonly (readonly [key: CountRuleKey, name: string])[] = RULES.flatMap((rule) =>
  rule.use === 'count' ? [[rule.key, rule.inRange] as const] : [],
);

function rulesOf(other: Read, first: Read, show: Show): string[] {
  // A gap by span has taken the place of the gap as typed: then the two spans are held against each other.
  const bySpan = other.read.limits.gapPerMetre > 0 || first.read.limits.gapPerMetre > 0;
  const lengths = LENGTH_RULES.filter(([key]) => {
    if (key === 'expansionGap' && bySpan) return false;
    return isTyped(other, key) && other.read.rules[key] !== first.read.rules[key];
  });
  const [own, used] = [other.read.limits, first.read.limits];
  const asTyped = (name: string, key: keyof RulesEntry) => `${name} ${other.entry.rules[key]}`;
  return [
    ...lengths.map(([key, name]) => `${name} ${show(other.read.rules[key])}`),
    ...(own.isOwn.along && own.along !== used.along ? [asTyped('longest floor along the rows', 'longestAlong')] : []),
    ...(own.isOwn.across && own.across !== used.across
      ? [asTyped('longest floor across the rows', 'longestAcross')]
      : []),
    ...(own.gapPerMetre > 0 && own.gapPerMetre !== used.gapPerMetre ? [asTyped('gap by span', 'gapBySpan')] : []),
  ];
}

/** Direction and start are a room's own: only what somebody typed is told, never a default. */
function layingOf(other: Read, first: Read): string[] {
  const told: readonly (readonly [key: keyof RulesEntry, name: string, own: unknown, used: unknown])[] = [
    ['layDirection', 'lay direction', directionOf(other), directionOf(first)],
    ['startSide', 'first row at the side', other.read.start.startSide, first.read.start.startSide],
    ['firstRow', 'first row', other.read.start.firstRow, first.read.start.firstRow],
    ['startEdge', 'edge at the start wall', other.read.start.startEdge, first.read.start.startEdge],
    ['reuseStrips', 'strips of the first row in the last', other.read.start.reuseStrips, first.read.start.reuseStrips],
    ['aim', 'plan for', other.read.start.aim, first.read.start.aim],
    ...COUNT_RULES.map(([key, name]) => [key, name, other.read.rules[key], first.read.rules[key]] as const),
  ];
  return told
    .filter(([key, , own, used]) => isTyped(other, key) && own !== used)
    .map(([key, name]) => `${name} ${other.entry.rules[key]}`);
}

function directionOf({ read }: Read): string {
  return read.start.direction === 'best' ? 'best' : JSON.stringify(read.rules.layDirection);
}

function isTyped({ entry }: Read, key: keyof RulesEntry): boolean {
  const typed: Typed = entry.rules[key];
  return String(typed).trim() !== '';
}
