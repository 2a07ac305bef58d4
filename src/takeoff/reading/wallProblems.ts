/** Sentences about the last row at a wall that was measured: what, where, found, wanted. */

const GLUED = 'glue each narrow piece to its plank before you set the two.';

export const wallProblems = {
  twoDistances: () => 'distances has one distance. Measure at both ends of the row at least.',

  reach: (row: string, reach: string) =>
    `The pieces are ${row} together, and the distances reach ${reach}. Measure as far as the row goes, or beyond.`,

  noRowLeft: () => `Take that row up, and ${GLUED}`,

  outOfLine: () =>
    'The wall is too far out of line for one row: share the taper over the rows that are left, or fur the wall out.',

  ripBefore: (width: string, least: string) =>
    `Rip one of the rows still to be laid to ${width}: then the last one is ${least} or more. Its sawn edge has no lock: join it with a glued slip tongue. Or ${GLUED}`,

  leaveOff: (gap: string) => `Or leave it off, where trim hides a gap of ${gap}.`,
};
