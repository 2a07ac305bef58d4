/** At which field of an entry a fault of the room is shown. */
import type { RoomFault } from '../../room/faults';
import type { ShapeEntry } from '../entry';

const LISTS = { 'cut-out': 'cutouts', doorway: 'doorways', bow: 'bows' } as const;

/** The field's path, as `Problem.field` has it; `shape` when the fault is of the walls together. */
export function fieldOfFault(fault: RoomFault, shape: ShapeEntry['kind']): string {
  switch (fault.code) {
    case 'not above 0':
      if (fault.what === 'cut-out') return numbered('cutouts', fault.number, 'length');
      if (fault.what === 'doorway') return numbered('doorways', fault.number, 'width');
      return shapeField(fault.what, fault.number, shape);
    case 'measure off':
      if (fault.what === 'wall') return wallField(fault.number, shape);
      return numbered('shape.diagonals', fault.number, 'length');
    case 'no such corner':
    case 'diagonal of one corner':
      return numbered('shape.diagonals', fault.diagonalNumber, 'to');
    case 'wall bows twice':
    case 'bow off its wall':
    case 'curve too deep':
    case 'bowed walls meet':
      return 'bows';
    case 'turn and diagonals disagree':
    case 'turn missing':
      return numbered('shape.walls', fault.wallNumber, 'turn');
    case 'walls meet':
      return wallField(fault.wallNumbers[0], shape);
    case 'diagonal':
      return 'shape.diagonal';
    case 'diagonals disagree':
      return 'shape.otherDiagonal';
    case 'no such wall':
      return numbered(LISTS[fault.what], fault.number, 'wall');
    case 'front too curved':
      return numbered('cutouts', fault.cutoutNumber, 'rise');
    case 'cut-out outside':
    case 'cut-out fills room':
      return numbered('cutouts', fault.cutoutNumber, 'along');
    case 'doorway off its wall':
      return numbered('doorways', fault.doorwayNumber, 'along');
    case 'doorways overlap':
      return numbered('doorways', fault.doorwayNumbers[1], 'along');
    case 'doorway meets room':
      return numbered('doorways', fault.doorwayNumber, 'depth');
    default:
      return 'shape';
  }
}

function shapeField(
  what: 'length' | 'width' | 'wall' | 'diagonal' | 'rectangle',
  number: number,
  shape: ShapeEntry['kind'],
): string {
  if (what === 'length' || what === 'width') return `shape.${what}`;
  if (what === 'diagonal') return number === 1 ? 'shape.diagonal' : 'shape.otherDiagonal';
  return what === 'wall' ? wallField(number, shape) : numbered('shape.rectangles', number, 'length');
}

function wallField(wallNumber: number, shape: ShapeEntry['kind']): string {
  if (shape === 'walls in order') return numbered('shape.walls', wallNumber, 'length');
  return shape === 'four walls' ? `shape.walls.${wallNumber - 1}` : 'shape';
}

function numbered(list: string, number: number, field: string): string {
  return `${list}.${number - 1}.${field}`;
}
