/** Sentences about a cut list that is to be planned on from: what, where, found, wanted. */
import { plural } from '../text/plural';

export const planOnProblems = {
  noList: (room: string) => `${room} has no cut list with pieces to tick. Fill the tabs first.`,

  nothingBefore: (room: string) => `${room} has not been planned on: there is no list to bring back.`,

  notDone: (room: string, open: number) =>
    `${room}: ${plural(open, 'piece is', 'pieces are')} not ticked as laid yet. Tick what lies; the rest of the list is still to be laid.`,

  sharedApart: (room: string, others: string) =>
    `${room} is cut from planks that it shares with ${others}, and their lists are not of one plan any more, or not all there. Bring back the lists before, fill the order again, or finish the rooms as they are listed.`,

  sharedNotSaved: (room: string, other: string) =>
    `${room} is cut from planks that it shares with ${other}, and that is not among the saved rooms. Save it, or finish the rooms as they are listed.`,

  otherPlank: (room: string) => `its planks are of another size than those of ${room}: they share none any more.`,

  otherRows: (listed: number, drawn: number) =>
    `The cut list has ${listed} rows, the room as it is entered here ${drawn}. Open the room as it was when the list was filled.`,

  otherRuns: (rowNumber: number, listed: number, drawn: number) =>
    `Row ${rowNumber}: the list has ${listed} lengths in the column Run, the room as it is entered here ${drawn}. A cell of that column is never blank at the first piece of a run.`,

  otherLength: (rowNumber: number, listed: string, drawn: string) =>
    `Row ${rowNumber} is ${listed} in the list and ${drawn} as the room is entered here. Open the room as it was, or type what you found into the column Run.`,

  foundFarOff: (rowNumber: number, found: string, drawn: string) =>
    `Row ${rowNumber}: ${found} was found where ${drawn} is drawn. More than half a plank is another room: enter it as it is.`,

  ticksWithGap: (ticked: string, before: string) =>
    `${ticked} is ticked as laid and ${before} before it is not. Tick what lies, or take the tick away.`,

  longerThanPlank: (label: string, cut: string, plank: string) =>
    `${label} is typed as cut at ${cut}; a plank is ${plank}. Type the length of the piece.`,

  cutAt: (label: string, found: string) =>
    `${label}: "${found.slice(0, 40)}" in the column Cut at is not a length. Type it such as 14 3/8" or 365 mm.`,

  run: (label: string, found: string) =>
    `${label}: "${found.slice(0, 40)}" in the column Run is not a length. Type what you find between the spacers, such as 143 1/2" or 3640 mm.`,

  mark: (label: string, found: string, words: readonly string[]) =>
    `${label}: "${found.slice(0, 40)}" in the column Mark is no mark. Choose ${words.join(' or ')}, or leave it blank.`,

  listed: (label: string, length: string) =>
    `${label}: its length "${length.slice(0, 40)}" cannot be read. Lengths in the list are to stay as they were filled; what you cut goes into Cut at.`,

  morePieces: (plankNumber: number, cut: string, plank: string) =>
    `Plank ${plankNumber}: what is cut from it comes to ${cut}, and a plank is ${plank}. Check the column Cut at.`,
};
