/** Sentences about tabs and about what the sidebar sends: what, where, found, wanted. */
import { isFilled } from '../geometry/lists';
import { listed } from '../takeoff/text/plural';

const TYPE_AGAIN = 'Open the sidebar again and type the room there.';

export const tabProblems = {
  keptChanging: (title: string) =>
    `Somebody else keeps changing the tab "${shortened(title)}". Wait a moment, then try again.`,

  noEntry: () => `The sidebar sent something that is not a room. ${TYPE_AGAIN}`,

  noRoomName: () => 'Room name is blank. Type a name such as Living room: the tabs are named after it.',

  longName: (length: number, most: number) => `Room name has ${length} characters. Keep it to ${most}.`,

  nameTaken: (name: string) => `"${shortened(name)}" is saved already. Give the room a name that no other room has.`,

  missing: (where: string, choices: readonly string[]) => `${where} is blank. Choose ${anyOf(choices)}.`,

  choice: (where: string, found: string, choices: readonly string[]) =>
    `${where}: "${shortened(found)}" is not a choice. Choose ${anyOf(choices)}.`,

  date: (where: string) =>
    `${where} is a date: the spreadsheet turns 5/8 into one. Clear the cell, set its format to plain text, and type 5/8".`,

  notTyped: (where: string) => `${where}: a number or text is wanted. Type a length such as 12' 6" or 3.81 m.`,

  longText: (where: string, length: number, most: number) =>
    `${where} has ${length} characters. At most ${most} are kept; type it shorter.`,

  longList: (where: string, count: number, most: number) => `${where}: there are ${count}. At most ${most} are taken.`,

  fourWalls: (count: number) =>
    `Walls: the room is measured as four walls, but ${count} are typed. Keep four, or measure it as walls in order, with turns.`,

  noList: (where: string) => `${where}: a list is wanted. ${TYPE_AGAIN}`,

  /** The `Rooms` tab, by whichever name it goes now. */
  noRoomLine: (label: string) =>
    `The tab with the saved rooms has no line "${label}" in its first column, so the rooms in it cannot be read. Put the line back, with its label in the first column and what belongs to each room to the right.`,

  lineTwice: (label: string) => `The line "${shortened(label)}" is there twice. The upper one is read.`,

  savedTwice: (name: string) => `"${shortened(name)}" is saved twice. The left one is read; rename the other.`,

  /** The homeowner's page and the order, whichever was filled last. */
  olderPage: () =>
    "The homeowner's page is older than this order, and says so on its top line. Fill it again before it is handed over.",

  orderDiffers: (inOrder: string, onPage: string) =>
    `The Order tab comes to ${inOrder} and this page to ${onPage}: since the order was filled, the job or a room has changed, or somebody has changed a cell of the order that the page does not use. Fill the order, then fill the page again.`,

  /** A saved room that cannot be read, said at the room. */
  inRoom: (name: string, sentence: string) => `${name === '' ? 'A room without a name' : shortened(name)}: ${sentence}`,
};

function shortened(found: string): string {
  return found.length > 40 ? `${found.slice(0, 37)}...` : found;
}

function anyOf(choices: readonly string[]): string {
  return listed(choices.filter(isFilled), 'or');
}
