/** The marking drawing of a piece on the page, in a dialog that Escape closes. */
import { distanceBetween } from '../../geometry/point';
import type { FloorPiece, Takeoff } from '../../takeoff/result';
import { button, drawn, element } from '../parts/dom';
import { type Dimension, type MarkedPiece, type MarkedSize, markedPieceOf, type Side } from './marking';
import { NearView, nearerByKeys, type SeenPart } from './nearView';
import { pathOf, type Scale } from './paper';
import { sizeWords, sourceWords } from './pieceWords';
import { printOnePage } from './printedFloor';

/** Pixels of the paper: as wide as the page, and no wider than is of use. */
const WIDEST = 640;
const widthNow = () => Math.min(WIDEST, Math.max(240, window.innerWidth - 34));
/** Nearer than this nothing more is to be seen. */
const NEAREST = 20;
const MOST_HEIGHT = 130;
/** A narrow piece is looked at nearer on a paper of some height. */
const LEAST_HEIGHT = 110;
const TIER = 15;
const LETTER = 5.6;

/**
 * Opens the marking drawing of a piece; its neighbours in laying order are one button away.
 *
 * @param large opens it larger elsewhere; null where it is as large as it gets
 */
export function openMarking(first: FloorPiece, plan: Takeoff, large: ((label: string) => void) | null): void {
  const dialog = element('dialog', { class: 'marking', 'aria-labelledby': 'marking-heading' });
  const show = (piece: FloorPiece, focusId: string) => {
    const index = plan.pieces.findIndex(({ label }) => label === piece.label);
    const step = (words: string, by: -1 | 1) => {
      const next = plan.pieces[index + by];
      const id = `marking-${words.toLowerCase()}`;
      return button(words, () => show(next, id), { id, disabled: next === undefined });
    };
    const close = button('Close', () => dialog.close(), { id: 'marking-close' });
    const print = button('Print', () => printMarking(piece, plan));
    const larger = button('Larger', () => {
      dialog.close();
      large?.(piece.label);
    });
    const content = contentOf(piece, plan);
    const others = [...(large ? [larger] : []), ...content.view.buttons(), print, close];
    const steps = element('div', 'steps', step('Previous', -1), step('Next', 1), ...others);
    dialog.replaceChildren(...content.parts, steps);
    const focused = document.getElementById(focusId) as HTMLButtonElement | null;
    (focused && !focused.disabled ? focused : close).focus();
  };
  dialog.addEventListener('close', () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
  show(first, 'marking-close');
}

/** On one page, with its dimensions and marks in words. */
function printMarking(piece: FloorPiece, plan: Takeoff): void {
  const marked = markedPieceOf(piece, plan);
  const whole = { width: WIDEST, height: heightOf(marked, WIDEST), times: 1, middle: { x: 0, y: 0 } };
  const lettered = letters(marked, WIDEST);
  const [heading, ...rest] = partsOf(piece, plan, lettered, markingElement(marked, lettered, piece.label, whole));
  printOnePage(heading.textContent ?? '', rest, false);
}

/** What the dialog shows of a piece, its drawing to be looked at nearer. */
function contentOf(piece: FloorPiece, plan: Takeoff): { readonly parts: Element[]; readonly view: NearView } {
  const marked = markedPieceOf(piece, plan);
  const lettered = letters(marked, widthNow());
  const paper = element('div', {
    class: 'large-paper marking-paper',
    style: `height: ${Math.max(LEAST_HEIGHT, heightOf(marked, widthNow()))}px`,
    ...nearerByKeys('piece'),
  });
  const view = new NearView(paper, NEAREST, (seen) =>
    paper.replaceChildren(markingElement(marked, lettered, piece.label, seen)),
  );
  return { parts: partsOf(piece, plan, lettered, paper), view };
}

function partsOf(
  piece: FloorPiece,
  plan: Takeoff,
  lettered: ReadonlyMap<Dimension, string>,
  picture: Element,
): Element[] {
  const { dimensions } = markedPieceOf(piece, plan);
  const lines = dimensions.map((dimension) => {
    const letter = lettered.get(dimension) ?? '';
    const name = letter === '' ? dimension.name : `${letter}: ${dimension.name}`;
    return element('div', {}, element('dt', {}, name), element('dd', {}, dimension.text));
  });
  const marks = piece.marks.map((mark) => element('li', {}, mark));
  return [
    element('h2', { id: 'marking-heading' }, `Piece ${piece.label}`),
    element('p', {}, `${sizeWords(piece, plan.units)}. ${sourceWords(piece)}`),
    element('p', 'edge-name', `far edge (${plan.startEdge === 'tongue' ? 'groove' : 'tongue'})`),
    picture,
    element('p', 'edge-name', `start edge (${plan.startEdge}), towards the start wall`),
    element('dl', 'numbers', ...lines),
    ...(marks.length > 0 ? [element('ol', 'notes', ...marks)] : []),
    element('p', 'help', cutsWords(piece)),
  ];
}

function cutsWords({ cuts }: FloorPiece): string {
  return cuts.length === 0 ? 'No cut: laid whole.' : `Cuts: ${cuts.join(', ')}.`;
}

/** From the piece to the paper. */
interface Placed {
  readonly marked: MarkedPiece;
  readonly scale: Scale;
  readonly seen: SeenPart;
}

/** Pixels of a tick where all is seen. The rest of the plank is drawn no longer than fits. */
function fitOf({ length, width, restFrom, restTo }: MarkedPiece, margins: Record<Side, number>, paperWidth: number) {
  const [from, to] = [Math.min(0, restFrom ?? 0), Math.max(length, restTo ?? 0)];
  const perTick = Math.min((paperWidth - margins.left - margins.right) / (to - from), MOST_HEIGHT / width);
  return { from, to, perTick };
}

function heightOf(marked: MarkedPiece, paperWidth: number): number {
  const margins = marginsOf(tiersOf(marked.dimensions));
  return Math.ceil(margins.top + marked.width * fitOf(marked, margins, paperWidth).perTick + margins.bottom);
}

/** However near it is seen, dimensions stand beside the piece. */
function scaleOf(
  marked: MarkedPiece,
  margins: Record<Side, number>,
  { width, height, times, middle }: SeenPart,
): Scale {
  const { from, to, perTick: fit } = fitOf(marked, margins, width);
  const perTick = fit * times;
  const [x0, y0] = [
    width / 2 + ((margins.left - margins.right) / 2) * times + middle.x - ((from + to) / 2) * perTick,
    height / 2 + ((margins.top - margins.bottom) / 2) * times + middle.y + (marked.width / 2) * perTick,
  ];
  return { perTick, place: ({ x, y }) => ({ x: x0 + x * perTick, y: y0 - y * perTick }) };
}

function markingElement(
  marked: MarkedPiece,
  lettered: ReadonlyMap<Dimension, string>,
  label: string,
  seen: SeenPart,
): SVGSVGElement {
  const tiers = tiersOf(marked.dimensions);
  const scale = scaleOf(marked, marginsOf(tiers), seen);
  const placed = { marked, scale, seen };
  const wordsOf = (dimension: Dimension) =>
    hasRoom(dimension, scale) ? dimension.text : (lettered.get(dimension) ?? dimension.text);
  return drawn(
    'svg',
    {
      class: 'piece-drawing',
      viewBox: `0 0 ${seen.width} ${seen.height}`,
      width: seen.width,
      height: seen.height,
      role: 'img',
      'aria-label': `Piece ${label}, drawn to scale`,
    },
    ...restElement(marked, scale),
    drawn('path', { class: 'cut-piece', d: pathOf(marked.shape, scale), 'fill-rule': 'evenodd' }),
    ...marked.sizes.flatMap((size) => sizeElements(size, scale, seen.width)),
    ...[...tiers].map(([dimension, tier]) => dimensionElement(dimension, tier, wordsOf(dimension), placed)),
  );
}

/** A broken line across the piece or along it, and how wide or long it is there, where that has room. */
function sizeElements({ from, to, text }: MarkedSize, scale: Scale, paperWidth: number): SVGElement[] {
  const [a, b] = [scale.place(from), scale.place(to)];
  const line = drawn('path', { class: 'dimension across', d: `M${a.x},${a.y}L${b.x},${b.y}` });
  const half = (text.length * LETTER) / 2 + 2;
  const isSeen = Math.max(a.x, b.x) > 0 && Math.min(a.x, b.x) < paperWidth;
  const middle = middleSeen(a.x, b.x, paperWidth);
  const placed = isSeen ? Math.min(Math.max(middle, half), paperWidth - half) : middle;
  const transform = `translate(${placed},${(a.y + b.y) / 2})`;
  const words = drawn('text', { class: 'dimension-text', transform, dy: '0.35em' }, text);
  return distanceBetween(a, b) < TIER ? [line] : [line, words];
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

function hasRoom({ from, to, text }: Dimension, { perTick }: Scale): boolean {
  return (to - from) * perTick >= text.length * LETTER + 6;
}

/** Dimensions that are too short on a paper that shows all to hold their text get a letter, in order. */
function letters(marked: MarkedPiece, width: number): ReadonlyMap<Dimension, string> {
  const whole = { width, height: 0, times: 1, middle: { x: 0, y: 0 } };
  const scale = scaleOf(marked, marginsOf(tiersOf(marked.dimensions)), whole);
  const small = marked.dimensions.filter((dimension) => !hasRoom(dimension, scale));
  return new Map(small.map((dimension, i) => [dimension, String.fromCharCode(97 + (i % 26))] as const));
}

/** A line with a stroke at both ends, and its text or letter on what is seen of it. */
function dimensionElement(
  { side, from, to }: Dimension,
  tier: number,
  words: string,
  { marked, scale, seen }: Placed,
): SVGElement {
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
  const [x, y] = [middleSeen(ax, bx, seen.width), middleSeen(ay, by, seen.height)];
  const text = drawn(
    'text',
    { class: 'dimension-text', transform: `translate(${x},${y})${turn}`, dy: '0.35em' },
    words,
  );
  return drawn('g', {}, drawn('path', { class: 'dimension', d: line }), text);
}

/** The middle of as much of a stretch as is on the paper; of none that is, the middle of all of it. */
function middleSeen(one: number, other: number, size: number): number {
  const [low, high] = [Math.max(0, Math.min(one, other)), Math.min(size, Math.max(one, other))];
  return low < high ? (low + high) / 2 : (one + other) / 2;
}
