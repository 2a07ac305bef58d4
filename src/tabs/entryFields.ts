/**
 * Every field of a room entry, in the order in which it is shown, with the plain words it goes by: the one table from
 * which an entry that came from outside is checked, and from which the `Rooms` tab is written and read.
 */

export interface EntryField {
  /** Its name in the entry. */
  readonly key: string;
  /** What a person reads; `#` stands for the number of the wall, cut-out or whatever it belongs to. */
  readonly label: string;
  /** What may stand there, '' if it may be left blank. Without choices: a number or text as typed. */
  readonly choices?: readonly string[];
  /** Words only: a number that stands there is meant as text. */
  readonly isText?: true;
}

/** Fields that stand together in an entry. */
export interface EntrySection {
  /** Where in the entry: '' is the entry itself. */
  readonly at: '' | 'shape' | 'shape.walls' | 'shape.rectangles' | 'cutouts' | 'doorways' | 'product' | 'rules';
  /** Whether a list of such fields stands there, numbered from 1. */
  readonly isList: boolean;
  readonly fields: readonly EntryField[];
}

export const UNITS = ['us', 'metric'] as const;
export const SHAPE_KINDS = ['rectangle', 'four walls', 'walls in order', 'rectangles'] as const;
export const ROOM_LABEL = 'Room';

const section = (at: EntrySection['at'], isList: boolean, fields: readonly EntryField[]): EntrySection => ({
  at,
  isList,
  fields,
});

export const NAME_FIELDS = section('', false, [
  { key: 'name', label: ROOM_LABEL, isText: true },
  { key: 'units', label: 'Units', choices: UNITS },
]);

export const SHAPE_KIND_FIELDS = section('shape', false, [{ key: 'kind', label: 'Measured as', choices: SHAPE_KINDS }]);

export const RECTANGLE_FIELDS = section('shape', false, [
  { key: 'length', label: 'Length' },
  { key: 'width', label: 'Width' },
]);

export const WALL_FIELDS = section('shape.walls', true, [
  { key: 'length', label: 'Wall #' },
  { key: 'turn', label: 'Turn after wall #' },
]);

export const DIAGONAL_FIELDS = section('shape', false, [
  { key: 'diagonal', label: 'Diagonal from wall 1 start to wall 2 end' },
  { key: 'otherDiagonal', label: 'Other diagonal' },
]);

export const RECTANGLES_FIELDS = section('shape.rectangles', true, [
  { key: 'change', label: 'Rectangle #', choices: ['add', 'take away'] },
  { key: 'fromLeft', label: 'Rectangle #, from left' },
  { key: 'fromNear', label: 'Rectangle #, from near' },
  { key: 'length', label: 'Rectangle #, length' },
  { key: 'width', label: 'Rectangle #, width' },
]);

export const CUTOUT_FIELDS = section('cutouts', true, [
  { key: 'kind', label: 'Cut-out #', choices: ['rectangle', 'round'] },
  { key: 'wall', label: 'Cut-out #, from wall number' },
  { key: 'along', label: 'Cut-out #, along the wall' },
  { key: 'off', label: 'Cut-out #, off the wall' },
  { key: 'length', label: 'Cut-out #, length or diameter' },
  { key: 'depth', label: 'Cut-out #, depth' },
]);

export const DOORWAY_FIELDS = section('doorways', true, [
  { key: 'floor', label: 'Doorway #, floor', choices: ['transition', 'goes on', 'stays shut'] },
  { key: 'wall', label: 'Doorway #, in wall number' },
  { key: 'along', label: 'Doorway #, along the wall' },
  { key: 'width', label: 'Doorway #, width' },
  { key: 'depth', label: 'Doorway #, depth' },
  { key: 'leadsTo', label: 'Doorway #, goes on into room', isText: true },
  { key: 'itsDoorway', label: 'Doorway #, its number there' },
  { key: 'wallThickness', label: 'Doorway #, wall thickness' },
]);

export const PRODUCT_FIELDS = section('product', false, [
  { key: 'name', label: 'Product', isText: true },
  { key: 'kind', label: 'Kind of floor', choices: ['laminate', 'engineered wood', 'solid wood', 'rigid vinyl'] },
  { key: 'plankLength', label: 'Plank length' },
  { key: 'plankWidth', label: 'Plank width' },
  { key: 'thickness', label: 'Plank thickness' },
  { key: 'planksPerBox', label: 'Planks in a box' },
  { key: 'boxCoverage', label: 'A box covers' },
  { key: 'pricePerBox', label: 'Price of a box' },
]);

export const RULE_FIELDS = section('rules', false, [
  { key: 'expansionGap', label: 'Expansion gap' },
  { key: 'minStagger', label: 'Minimum stagger' },
  { key: 'minPiece', label: 'Minimum piece' },
  { key: 'minRip', label: 'Minimum rip' },
  { key: 'kerf', label: 'Kerf' },
  { key: 'play', label: 'Play' },
  { key: 'alignedDistance', label: 'Aligned-joint distance' },
  { key: 'markingStep', label: 'Marking step' },
  { key: 'layDirection', label: 'Lay direction' },
  { key: 'startSide', label: 'First row lies', choices: ['', 'near', 'far', 'middle', 'best'] },
  { key: 'firstRow', label: 'First row width' },
  { key: 'reuseStrips', label: 'Strips of the first row in the last', choices: ['', 'yes', 'no'] },
  { key: 'spare', label: 'Spare planks' },
  { key: 'longestAlong', label: 'Longest floor along the rows' },
  { key: 'longestAcross', label: 'Longest floor across the rows' },
  { key: 'gapBySpan', label: 'Gap by span' },
]);

/** All of them, in the order of the `Rooms` tab. */
export const ENTRY_SECTIONS: readonly EntrySection[] = [
  NAME_FIELDS,
  SHAPE_KIND_FIELDS,
  RECTANGLE_FIELDS,
  WALL_FIELDS,
  DIAGONAL_FIELDS,
  RECTANGLES_FIELDS,
  CUTOUT_FIELDS,
  DOORWAY_FIELDS,
  PRODUCT_FIELDS,
  RULE_FIELDS,
];
