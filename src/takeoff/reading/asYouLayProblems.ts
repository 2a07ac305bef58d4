/** Sentences about what is typed into a cut list while the floor is laid: what, where, found, wanted. */
export const asYouLayProblems = {
  number: (label: string, found: string, most: number) =>
    `${label}: "${found.slice(0, 40)}" is no number from 1 to ${most}. Type one, or leave it blank.`,

  distance: (label: string, found: string) =>
    `${label}: "${found.slice(0, 40)}" is not a distance. Type it such as 14 3/8" or 365 mm, from the edge of the row to the wall.`,

  /** @param missing the end, or both, where nothing is typed */
  bothEnds: (missing: readonly string[]) =>
    `The distances to the far wall: both ends are needed. Type "${missing.join('" and "')}" too.`,

  notLaid: (rowNumber: number) =>
    `The far wall is measured from the edge of row ${rowNumber}, and that row is not ticked to its end. Type the row you measured from.`,

  otherSide: (rowNumber: number, first: number) =>
    `The far wall is the one at the last row, and row ${rowNumber} lies on the other side of the middle line. Measure from row ${first} or a later one.`,

  noRowToMeasure: () => 'The far wall is measured, but no row lies to measure from. Tick what lies, or type the row.',

  lastRowLies: () => 'The last row lies already: the distances to the far wall change nothing.',

  otherRowCount: (found: number, listed: number) =>
    `By these distances ${found} more ${found === 1 ? 'row fits' : 'rows fit'} and the list has ${listed}: measure again, or enter the room as it is and fill its tabs.`,
};
