/** A drawing as elements of the page. Pieces can be walked with the arrow keys and opened. */
import type { FloorPiece } from '../../takeoff/result';
import { drawn } from '../parts/dom';
import { type Drawing, type DrawnDoorway, type DrawnPiece, WALL, WHITE_LINE } from './drawing';

/** What becomes of pieces that are pointed at or pressed. */
export interface PieceEvents {
  /** The piece as it is told to those who hear the page. */
  words(piece: FloorPiece): string;
  /** A piece is pointed at, or has the keyboard. */
  shown(piece: FloorPiece): void;
  opened(piece: FloorPiece): void;
}

/**
 * @param events null for a drawing that is only looked at, such as the printed one
 * @param name one for each drawing that is on the page at a time
 */
export function drawingElement(drawing: Drawing, events: PieceEvents | null, name: string): SVGSVGElement {
  const { width, height, pieces } = drawing;
  const picture = drawn(
    'svg',
    { class: 'floor', viewBox: `0 0 ${width} ${Math.ceil(height)}`, role: 'group', 'aria-label': floorWords(drawing) },
    drawn('defs', {}, hatching(`hatch-${name}`, 45, 4), hatching(`first-${name}`, 0, 3.2)),
    drawn('path', { class: 'wall', d: drawing.outline, 'stroke-width': 2 * (WALL + WHITE_LINE) }),
    ...drawing.doorways.map((doorway) => drawn('path', { class: 'opening', d: doorway.opening })),
    drawn('path', { class: 'room', d: drawing.outline, 'stroke-width': 2 * WHITE_LINE }),
    drawn('path', { class: pieces.length > 0 ? 'under' : 'bare', d: drawing.floor }),
  );
  const places = pieces.map((piece) => pieceElement(piece, events, `url(#first-${name})`));
  picture.append(
    ...places,
    ...drawing.cutouts.map((d) => drawn('path', { class: 'cutout', d, fill: `url(#hatch-${name})` })),
    ...drawing.doorways.map(doorwayElement),
    ...drawing.wallNumbers.map(({ x, y, wallNumber }) =>
      drawn('text', { class: 'wall-number', x, y, dy: '0.35em' }, `W${wallNumber}`),
    ),
    ...startElements(drawing),
  );
  if (events) letWalk(places, pieces, events);
  return picture;
}

function floorWords({ pieces, doorways }: Drawing): string {
  const count =
    pieces.length === 0
      ? 'no pieces planned yet'
      : `${pieces.length} pieces; walk them with the arrow keys, Enter opens one`;
  return `Floor drawn to scale, ${count}${doorways.length > 0 ? `; ${doorways.length} doorways` : ''}`;
}

function hatching(id: string, turn: number, apart: number): SVGElement {
  const line = drawn('path', { d: `M0,0H${apart}`, class: 'hatch' });
  return drawn(
    'pattern',
    { id, width: apart, height: apart, patternUnits: 'userSpaceOnUse', patternTransform: `rotate(${turn})` },
    line,
  );
}

function pieceElement(
  { piece, path, label, tint }: DrawnPiece,
  events: PieceEvents | null,
  first: string,
): SVGGElement {
  const isFirst = piece.rowNumber === 1;
  const shapes = [drawn('path', { class: `piece tint-${tint}`, d: path, 'fill-rule': 'evenodd' })];
  if (isFirst) shapes.push(drawn('path', { class: 'first-row', d: path, fill: first, 'fill-rule': 'evenodd' }));
  const words = label ? [numberElement(piece.label, label, isFirst)] : [];
  if (!events) return drawn('g', {}, ...shapes, ...words);
  const group = drawn(
    'g',
    {
      class: 'place',
      role: 'button',
      tabindex: '-1',
      'data-piece': piece.label,
      'aria-label': events.words(piece),
    },
    ...shapes,
    ...words,
  );
  return group;
}

function numberElement(
  words: string,
  { x, y, turn, size }: NonNullable<DrawnPiece['label']>,
  isFirst: boolean,
): SVGElement {
  const place = `translate(${x.toFixed(2)},${y.toFixed(2)}) rotate(${turn})`;
  return drawn(
    'text',
    {
      class: isFirst ? 'number first' : 'number',
      transform: place,
      dy: '0.35em',
      'font-size': size.toFixed(2),
      'aria-hidden': 'true',
    },
    words,
  );
}

function doorwayElement({ doorwayNumber, floor, from, to, label }: DrawnDoorway): SVGElement {
  const line = drawn('path', { class: `door ${floor.replace(' ', '-')}`, d: `M${from.x},${from.y}L${to.x},${to.y}` });
  const number = drawn('text', { class: 'door-number', x: label.x, y: label.y, dy: '0.35em' }, `D${doorwayNumber}`);
  return drawn('g', {}, line, number);
}

/** A wedge at the start of row 1, pointing the way it is laid. */
function startElements({ start }: Drawing): SVGElement[] {
  if (!start) return [];
  const place = `translate(${start.at.x.toFixed(2)},${start.at.y.toFixed(2)}) rotate(${start.turn})`;
  return [drawn('path', { class: 'start', d: 'M-8,-4.5L0,0L-8,4.5Z', transform: place })];
}

/** One stop of the tab key for all pieces; the arrow keys go from piece to piece and from row to row. */
function letWalk(places: readonly SVGGElement[], pieces: readonly DrawnPiece[], events: PieceEvents): void {
  let current = 0;
  places[0]?.setAttribute('tabindex', '0');
  const goTo = (index: number) => {
    places[current].setAttribute('tabindex', '-1');
    current = Math.min(Math.max(index, 0), places.length - 1);
    places[current].setAttribute('tabindex', '0');
    places[current].focus();
  };
  places.forEach((place, i) => {
    const { piece } = pieces[i];
    place.addEventListener('focus', () => events.shown(piece));
    place.addEventListener('pointerenter', () => events.shown(piece));
    place.addEventListener('click', () => {
      goTo(i);
      events.opened(piece);
    });
    place.addEventListener('keydown', (event) => {
      const next = nextIndex(event.key, i, pieces);
      if (event.key === 'Enter' || event.key === ' ') events.opened(piece);
      else if (next === null) return;
      else goTo(next);
      event.preventDefault();
    });
  });
}

function nextIndex(key: string, index: number, pieces: readonly DrawnPiece[]): number | null {
  if (key === 'ArrowRight') return index + 1;
  if (key === 'ArrowLeft') return index - 1;
  if (key === 'Home') return 0;
  if (key === 'End') return pieces.length - 1;
  if (key !== 'ArrowUp' && key !== 'ArrowDown') return null;
  const { rowNumber, pieceNumber } = pieces[index].piece;
  const wanted = rowNumber + (key === 'ArrowUp' ? 1 : -1);
  const row = pieces.flatMap(({ piece }, i) => (piece.rowNumber === wanted ? [{ piece, i }] : []));
  return (row.find(({ piece }) => piece.pieceNumber >= pieceNumber) ?? row[row.length - 1])?.i ?? index;
}
