/** A drawing as elements of the page. Pieces can be walked with the arrow keys and opened. */

import { lastOf } from '../../geometry/lists';
import { distanceBetween } from '../../geometry/point';
import type { FloorPiece } from '../../takeoff/result';
import type { RowFault } from '../outcome/rowFaults';
import { drawn } from '../parts/dom';
import {
  type Drawing,
  type DrawnDoorway,
  type DrawnFault,
  type DrawnPiece,
  type DrawnWall,
  WALL,
  WHITE_LINE,
} from './drawing';
import type { LabelPlace } from './labelPlace';
import { type CornerNumber, type DrawnDiagonal, LETTER, RING } from './measureMarks';
import { lineBetween, type PaperPoint, placed } from './paper';

/** What becomes of pieces that are pointed at or pressed. */
export interface PieceEvents {
  /** The piece as it is told to those who hear the page. */
  words(piece: FloorPiece): string;
  /** A piece is pointed at, or has the keyboard; null: none any more. */
  shown(piece: FloorPiece | null): void;
  opened(piece: FloorPiece): void;
  /** What is wrong at a place is pointed at, or has the keyboard; '' no more. */
  told(words: string): void;
  /** What is wrong at a place was pressed. */
  faultPressed(fault: RowFault): void;
  /** An arrow key leads to the piece at this place of laying order, which may be out of view. */
  walked?(piece: FloorPiece): void;
}

/**
 * @param events null for a drawing that is only looked at, such as the printed one
 * @param name one for each drawing that is on the page at a time
 */
export function drawingElement(drawing: Drawing, events: PieceEvents | null, name: string): SVGSVGElement {
  const { width, height, pieces, rows } = drawing;
  const url = (id: string) => `url(#${id}-${name})`;
  const picture = drawn(
    'svg',
    {
      class: 'floor',
      viewBox: `0 0 ${width} ${Math.ceil(height)}`,
      width,
      height: Math.ceil(height),
      role: events ? 'group' : 'img',
      'aria-label': floorWords(drawing),
    },
    drawn('defs', {}, ...patterns(drawing, name)),
    drawn('path', { class: 'wall', d: drawing.outline, 'stroke-width': 2 * (WALL + WHITE_LINE) }),
    ...drawing.doorways.map((doorway) => drawn('path', { class: 'opening', d: doorway.opening })),
    drawn('path', { class: 'room', d: drawing.outline, 'stroke-width': 2 * WHITE_LINE }),
    drawn('path', { class: pieces.length > 0 ? 'under' : 'bare', d: drawing.floor, 'fill-rule': 'evenodd' }),
    drawn('path', { class: 'band', d: rows.bands.join(''), 'clip-path': url('clip') }),
  );
  const places = pieces.map((piece) => pieceElement(piece, events));
  picture.append(
    ...drawing.walls.flatMap(wallElements),
    ...places,
    hatched('from-offcut', pieces, ({ tint }) => tint === 'offcut', url('offcut')),
    hatched('is-ripped', pieces, ({ isRipped }) => isRipped, url('ripped')),
    ...drawing.diagonals.map(lineElement),
    ...pieces.flatMap(({ piece, label }) =>
      label && isClearOf(drawing, label) ? [numberElement(piece.label, label)] : [],
    ),
    ...rows.numbers.flatMap(({ x, y, rowNumber }) =>
      isClearOf(drawing, { x, y }) ? [drawn('text', { class: 'row-number', x, y, dy: '0.35em' }, `${rowNumber}`)] : [],
    ),
    ...drawing.cutouts.map((d, i) =>
      drawn('path', { class: 'cutout', d, fill: url('hatch'), 'data-mark': `cutout ${placeInForm(drawing, i)}` }),
    ),
    ...drawing.covered.map(({ d, place }) => drawn('path', { class: 'covered', d, 'data-mark': `cutout ${place}` })),
    ...drawing.doorways.map(doorwayElement),
    ...drawing.wallNumbers.map(({ words, isWorst, turn, ...at }) =>
      wordsElement(words, at, turn, isWorst ? 'wall-number worst' : 'wall-number'),
    ),
    ...drawing.cornerNumbers.map(ringElement),
    ...drawing.diagonals.filter(({ words }) => words !== '').map(diagonalWords),
    ...startElements(drawing),
    ...drawing.faults.map((fault, i) => {
      // One stop of the tab key for each field that they lead to.
      const isFirst = drawing.faults.findIndex((other) => other.fault.field === fault.fault.field) === i;
      return faultElement(fault, events, isFirst ? 0 : -1);
    }),
  );
  if (events) letWalk(places, pieces, events);
  return picture;
}

/** Where the cut-out that is drawn as number `index` stands in the form, from 0: what stands over the floor is drawn apart. */
function placeInForm({ covered }: Drawing, index: number): number {
  return covered.reduce((place, other) => (other.place <= place ? place + 1 : place), index);
}

function floorWords({ pieces, doorways }: Drawing): string {
  const count =
    pieces.length === 0
      ? 'no pieces told apart'
      : `${pieces.length} pieces; move between them with the arrow keys, open one with Enter`;
  return `Floor drawn to scale, ${count}${doorways.length > 0 ? `; ${doorways.length} doorways` : ''}`;
}

/** Hatchings that hold in black and white, and the edge of the floor, which rows run beyond. */
function patterns({ floor, start }: Drawing, name: string): SVGElement[] {
  return [
    hatching(`hatch-${name}`, 45, 4, 'M0,0H4M0,0V4'),
    hatching(`offcut-${name}`, 45, 5, 'M0,0H5'),
    hatching(`ripped-${name}`, start?.turn ?? 0, 3.4, 'M0,0H3.4'),
    drawn('clipPath', { id: `clip-${name}` }, drawn('path', { d: floor, 'clip-rule': 'evenodd' })),
  ];
}

function hatching(id: string, turn: number, apart: number, lines: string): SVGElement {
  return drawn(
    'pattern',
    { id, width: apart, height: apart, patternUnits: 'userSpaceOnUse', patternTransform: `rotate(${turn})` },
    drawn('path', { d: lines, class: 'hatch' }),
  );
}

/** One path for all of them: a few thousand elements would be felt. */
function hatched(
  name: string,
  pieces: readonly DrawnPiece[],
  isOne: (piece: DrawnPiece) => boolean,
  fill: string,
): SVGElement {
  const d = pieces.filter(isOne).map(({ path }) => path);
  return drawn('path', { class: `over ${name}`, d: d.join(''), fill, 'fill-rule': 'evenodd' });
}

function pieceElement({ piece, path, tint }: DrawnPiece, events: PieceEvents | null): SVGElement {
  const shape = drawn('path', { class: `piece ${tint}`, d: path, 'fill-rule': 'evenodd' });
  if (!events) return shape;
  const told = { role: 'button', tabindex: '-1', 'data-piece': piece.label, 'aria-label': events.words(piece) };
  return drawn('g', { class: 'place', ...told }, shape);
}

/** The face of a wall and the corner at its end, to be marked or pressed. */
function wallElements({ wallNumber, to, face: d }: DrawnWall): SVGElement[] {
  const corner = { class: 'corner', cx: to.x.toFixed(2), cy: to.y.toFixed(2), r: 7 };
  return [
    drawn('path', { class: 'wall-face', d, 'data-mark': `wall ${wallNumber}` }),
    drawn('circle', { ...corner, 'data-mark': `corner ${wallNumber - 1}` }),
  ];
}

function numberElement(words: string, place: LabelPlace): SVGElement {
  return drawn(
    'text',
    {
      class: 'number',
      transform: placed(place, place.turn),
      dy: '0.35em',
      'font-size': place.size.toFixed(2),
      'aria-hidden': 'true',
    },
    words,
  );
}

/** Words about their middle. */
export function wordsElement(words: string, at: PaperPoint, turn: number, name: string): SVGElement {
  return drawn('text', { class: name, transform: placed(at, turn), dy: '0.35em' }, words);
}

/** The number of a corner in its ring. */
export function ringElement(corner: CornerNumber): SVGElement {
  return ring('corner-number', corner, RING, `${corner.cornerNumber}`);
}

function ring(name: string, at: PaperPoint, r: number, words: string): SVGElement {
  const text = drawn('text', { dy: '0.35em' }, words);
  return drawn('g', { class: name, transform: placed(at) }, drawn('circle', { r }), text);
}

function lineElement({ diagonalNumber, from, to, isWorst }: DrawnDiagonal): SVGElement {
  const d = lineBetween(from, to);
  return drawn('path', { class: `diagonal${isWorst ? ' worst' : ''}`, d, 'data-mark': `diagonal ${diagonalNumber}` });
}

function diagonalWords({ words, middle, turn, isWorst, diagonalNumber }: DrawnDiagonal): SVGElement {
  const width = words.length * LETTER * (isWorst ? 1.1 : 1) + 4;
  const made = wordsElement(words, { x: 0, y: 0 }, 0, `wall-number${isWorst ? ' worst' : ''}`);
  return drawn(
    'g',
    {
      class: 'diagonal-words',
      transform: placed(middle, turn),
      'data-mark': `diagonal ${diagonalNumber}`,
    },
    drawn('rect', { x: -width / 2, y: -7, width, height: 14, rx: 3 }),
    made,
  );
}

/** Words on a diagonal cover the numbers of pieces under them, and so do marks of what is wrong. */
function isClearOf({ diagonals, faults }: Drawing, { x, y }: PaperPoint): boolean {
  if (faults.some((fault) => Math.abs(fault.x - x) < 22 && Math.abs(fault.y - y) < 12)) return false;
  return diagonals.every(({ words, middle, from, to }) => {
    const length = distanceBetween(from, to) || 1;
    const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
    const [dx, dy] = [x - middle.x, y - middle.y];
    return Math.abs(dx * ux + dy * uy) > words.length * 2.9 + 14 || Math.abs(dy * ux - dx * uy) > 13;
  });
}

function doorwayElement({ doorwayNumber, floor, from, to, label }: DrawnDoorway): SVGElement {
  const line = drawn('path', { class: `door ${floor.replace(' ', '-')}`, d: `M${from.x},${from.y}L${to.x},${to.y}` });
  const number = drawn('text', { class: 'door-number', x: label.x, y: label.y, dy: '0.35em' }, `D${doorwayNumber}`);
  return drawn('g', { class: 'doorway', 'data-mark': `doorway ${doorwayNumber}` }, line, number);
}

/** An exclamation mark in a ring, to be pointed at and pressed. */
function faultElement(drawnFault: DrawnFault, events: PieceEvents | null, tabindex: 0 | -1): SVGElement {
  const { fault } = drawnFault;
  const { words } = fault;
  const made = ring('fault', drawnFault, 7, '!');
  if (!events) return made;
  made.setAttribute('role', 'button');
  made.setAttribute('tabindex', `${tabindex}`);
  made.setAttribute('aria-label', words);
  for (const name of ['focus', 'pointerenter']) made.addEventListener(name, () => events.told(words));
  for (const name of ['blur', 'pointerleave']) made.addEventListener(name, () => events.told(''));
  made.addEventListener('click', () => events.faultPressed(fault));
  made.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    events.faultPressed(fault);
  });
  return made;
}

/** A wedge at the start of row 1, pointing the way it is laid. */
function startElements({ start }: Drawing): SVGElement[] {
  if (!start) return [];
  const transform = placed(start.at, start.turn);
  return [drawn('path', { class: 'start', d: 'M-8,-4.5L0,0L-8,4.5Z', transform })];
}

/** One stop of the tab key for all pieces; the arrow keys go from piece to piece and from row to row. */
function letWalk(places: readonly SVGElement[], pieces: readonly DrawnPiece[], events: PieceEvents): void {
  let current = 0;
  places[0]?.setAttribute('tabindex', '0');
  const goTo = (index: number) => {
    places[current].setAttribute('tabindex', '-1');
    current = Math.min(Math.max(index, 0), places.length - 1);
    places[current].setAttribute('tabindex', '0');
    places[current].focus();
    events.walked?.(pieces[current].piece);
  };
  places.forEach((place, i) => {
    const { piece } = pieces[i];
    place.addEventListener('focus', () => events.shown(piece));
    place.addEventListener('blur', () => events.shown(null));
    place.addEventListener('pointerenter', () => events.shown(piece));
    place.addEventListener('pointerleave', () => events.shown(null));
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
  return (row.find(({ piece }) => piece.pieceNumber >= pieceNumber) ?? lastOf(row))?.i ?? index;
}
