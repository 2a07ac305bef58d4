/** Which field of the form a wall, a corner, a cut-out or a doorway of the drawing is typed in, and back. */
import type { ShapeKind } from '../form/draft';

/** Path of the field to go to when a mark such as `wall 3` is pressed; '' where there is none. */
export function fieldOfMark(mark: string, kind: ShapeKind): string {
  const [what, text] = mark.split(' ');
  const number = Number(text);
  if (what === 'cutout') return `cutouts.${number}.length`;
  if (what === 'doorway') return `doorways.${number - 1}.along`;
  if (what === 'diagonal') return diagonalField(number, kind);
  if (what === 'corner') return kind === 'walls in order' ? `shape.walls.${number}.turn` : '';
  return wallField(number, kind);
}

function diagonalField(number: number, kind: ShapeKind): string {
  if (kind === 'walls in order') return `shape.diagonals.${number - 1}.length`;
  return number === 1 ? 'shape.diagonal' : 'shape.otherDiagonal';
}

function wallField(wallNumber: number, kind: ShapeKind): string {
  switch (kind) {
    case 'rectangle':
      return wallNumber % 2 === 1 ? 'shape.length' : 'shape.width';
    case 'four walls':
      return `shape.walls.${wallNumber - 1}`;
    case 'walls in order':
      return `shape.walls.${wallNumber - 1}.length`;
    case 'rectangles':
      return '';
  }
}

/** What in the drawing a field is about; nothing for most fields. */
export function marksOfField(path: string): readonly string[] {
  if (path === 'shape.length') return ['wall 1', 'wall 3'];
  if (path === 'shape.width') return ['wall 2', 'wall 4'];
  if (path === 'shape.diagonal') return ['diagonal 1'];
  if (path === 'shape.otherDiagonal') return ['diagonal 2'];
  const [, list, index, key] =
    /^(?:shape\.)?(walls|diagonals|cutouts|doorways|bows)\.(\d+)(?:\.(\w+))?$/.exec(path) ?? [];
  const place = Number(index);
  if (list === 'walls') return key === 'turn' ? [`corner ${place}`] : [`wall ${place + 1}`];
  if (list === 'diagonals') return [`diagonal ${place + 1}`];
  if (list === 'cutouts') return [`cutout ${place}`];
  return list === 'doorways' ? [`doorway ${place + 1}`] : [];
}
