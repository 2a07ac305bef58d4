/** The marking drawing of a piece on the page, in a dialog that Escape closes. */
import type { FloorPiece, Takeoff } from '../../takeoff/result';
import { button, drawn, element } from '../parts/dom';
import { pathOf, type Scale } from './drawing';
import { type Dimension, type MarkedPiece, markedPieceOf, type Side } from './marking';
import { sizeWords, sourceWords } from './pieceWords';

/** Paper units. */
const WIDTH = 270;
const MOST_HEIGHT = 130;
const TIER = 15;
const LETTER = 5.6;

/** Opens the marking drawing of a piece; its neighbours in laying order are one button away. */
export function openMarking(first: FloorPiece, plan: Takeoff): void {
  const dialog = element('dialog', { class: 'marking', 'aria-labelledby': 'marking-heading' });
  const show = (piece: FloorPiece, focusId: string) => {
    const index = plan.pieces.findIndex(({ label }) => label === piece.label);
    const step = (words: string, by: -1 | 1) => {
      const next = plan.pieces[index + by];
      const id = `marking-${words.toLowerCase()}`;
      return button(words, () => show(next, id), { id, disabled: next === undefined });
    };
    const close = button('Close', () => dialog.close(), { id: 'marking-close' });
    const steps = element('div', { class: 'steps' }, step('Previous', -1), step('Next', 1), close);
    dialog.replaceChildren(...contentOf(piece, plan), steps);
    const focused = document.getElementById(focusId) as HTMLButtonElement | null;
    (focused && !focused.disabled ? focused : close).focus();
  };
  dialog.addEventListener('close', () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
  show(first, 'marking-close');
}

function contentOf(piece: FloorPiece, plan: Takeoff): Element[] {
  const marked = markedPieceOf(piece, plan);
  const lettered = letters(marked);
  const lines = marked.dimensions.map((dimension) => {
    const letter = lettered.get(dimension) ?? '';
    const name = letter === '' ? dimension.name : `${letter}: ${dimension.name}`;
    return element('div', {}, element('dt', {}, name), element('dd', {}, dimension.text));
  });
  const marks = piece.marks.map((mark) => element('li', {}, mark));
  return [
    element('h2', { id: 'marking-heading' }, `Piece ${piece.label}`),
    element('p', {}, `${sizeWords(piece, plan.units)}. ${sourceWords(piece)}`),
    element('p', { class: 'edge-name' }, 'far edge'),
    markingElement(marked, lettered, piece.label),
    element('p', { class: 'edge-name' }, 'start edge (towards the start wall)'),
    element('dl', { class: 'numbers' }, ...lines),
    ...(marks.length > 0 ? [element('ol', { class: 'notes' }, ...marks)] : []),
    element('p', { class: 'help' }, cutsWords(piece)),
  ];
}

function cutsWords({ cuts }: FloorPiece): string {
  return cuts.length === 0 ? 'No cut: laid whole.' : `Cuts: ${cuts.join(', ')}.`;
}

/** Pixels of a tick. The rest of the plank is drawn no longer than fits. */
function scaleOf({ shape, length, width, restFrom, restTo }: MarkedPiece, margins: Record<Side, number>) {
  const [from, to] = [Math.min(0, restFrom ?? 0), Math.max(length, restTo ?? 0)];
  const perTick = Math.min((WIDTH - margins.left - margins.right) / (to - from), MOST_HEIGHT / width);
  const left = margins.left - from * perTick;
  const place: Scale['place'] = ({ x, y }) => ({ x: left + x * perTick, y: margins.top + (width - y) * perTick });
  return { shape, scale: { perTick, place }, height: margins.top + width * perTick + margins.bottom };
}

function markingElement(marked: MarkedPiece, lettered: ReadonlyMap<Dimension, string>, label: string): SVGSVGElement {
  const tiers = tiersOf(marked.dimensions);
  const { shape, scale, height } = scaleOf(marked, marginsOf(tiers));
  const rest = restElement(marked, scale);
  return drawn(
    'svg',
    {
      class: 'piece-drawing',
      viewBox: `0 0 ${WIDTH} ${Math.ceil(height)}`,
      role: 'img',
      'aria-label': `Piece ${label}, drawn to scale`,
    },
    ...rest,
    drawn('path', { class: 'cut-piece', d: pathOf(shape, scale), 'fill-rule': 'evenodd' }),
    ...[...tiers].map(([dimension, tier]) =>
      dimensionElement(dimension, { tier, marked, scale, words: lettered.get(dimension) ?? dimension.text }),
    ),
  );
}

function restElement({ restFrom, restTo, width }: MarkedPiece, scale: Scale): SVGElement[] {
  if (restFrom === null || restTo === null) return [];
  const corners = [
    { x: restFrom, y: 0 },
    { x: restTo, y: 0 },
    { x: restTo, y: width },
    { x: restFrom, y: width },
  ];
  return [drawn('path', { class: 'rest', d: pathOf([corners], scale) })];
}

/** Dimensions of one side stand in tiers, so that none runs into another. */
function tiersOf(dimensions: readonly Dimension[]): ReadonlyMap<Dimension, number> {
  const tiers = new Map<Dimension, number>();
  // The shortest nearest to the piece.
  const sorted = [...dimensions].sort((a, b) => a.to - a.from - (b.to - b.from));
  for (const dimension of sorted) {
    const isFree = (tier: number) =>
      [...tiers].every(
        ([other, at]) =>
          at !== tier || other.side !== dimension.side || other.to <= dimension.from || other.from >= dimension.to,
      );
    let tier = 0;
    while (!isFree(tier)) tier++;
    tiers.set(dimension, tier);
  }
  return tiers;
}

function marginsOf(tiers: ReadonlyMap<Dimension, number>): Record<Side, number> {
  const margin = (side: Side) =>
    [...tiers].reduce(
      (most, [dimension, tier]) => (dimension.side === side ? Math.max(most, (tier + 1) * TIER + 4) : most),
      4,
    );
  return { top: margin('top'), bottom: margin('bottom'), left: margin('left'), right: margin('right') };
}

/** Dimensions that are too short on paper to hold their text get a letter, in order. */
function letters(marked: MarkedPiece): ReadonlyMap<Dimension, string> {
  const { scale } = scaleOf(marked, marginsOf(tiersOf(marked.dimensions)));
  const small = marked.dimensions.filter(
    ({ from, to, text }) => (to - from) * scale.perTick < text.length * LETTER + 6,
  );
  return new Map(small.map((dimension, i) => [dimension, String.fromCharCode(97 + (i % 26))] as const));
}

interface DimensionPlace {
  readonly tier: number;
  readonly marked: MarkedPiece;
  readonly scale: Scale;
  readonly words: string;
}

/** A line with a stroke at both ends, and its text or letter on it. */
function dimensionElement({ side, from, to }: Dimension, { tier, marked, scale, words }: DimensionPlace): SVGElement {
  const away = (tier + 1) * TIER - 4;
  const isAlong = side === 'top' || side === 'bottom';
  const edge = side === 'top' ? marked.width : side === 'right' ? marked.length : 0;
  const [a, b] = [from, to].map((at) => scale.place(isAlong ? { x: at, y: edge } : { x: edge, y: at }));
  const out = { top: [0, -away], bottom: [0, away], left: [-away, 0], right: [away, 0] }[side];
  const [ax, ay, bx, by] = [a.x + out[0], a.y + out[1], b.x + out[0], b.y + out[1]];
  const stroke = isAlong ? 'm0,-3v6' : 'm-3,0h6';
  const line = `M${ax},${ay}L${bx},${by}M${ax},${ay}${stroke}M${bx},${by}${stroke}M${a.x},${a.y}L${ax},${ay}M${b.x},${b.y}L${bx},${by}`;
  const isLetter = words.length === 1;
  const turn = isAlong || isLetter ? '' : ' rotate(-90)';
  const text = drawn(
    'text',
    { class: 'dimension-text', transform: `translate(${(ax + bx) / 2},${(ay + by) / 2})${turn}`, dy: '0.35em' },
    words,
  );
  return drawn('g', {}, drawn('path', { class: 'dimension', d: line }), text);
}
