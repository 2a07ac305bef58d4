/** The saved rooms that a job is for. A room that cannot be read is reported: without it the price would be too low. */
import { houseProblems } from '../order/houseProblems';
import type { RoomEntry } from '../takeoff/entry';
import { problems } from '../takeoff/reading/problems';
import type { Problem } from '../takeoff/result';
import { nameKey, sameName } from '../takeoff/text/names';
import type { SavedRoom, SavedRooms } from './rooms';
import { tabProblems } from './tabProblems';

/** With problems there is nothing to be ordered, whatever rooms there are. */
export interface ChosenRooms {
  readonly rooms: readonly RoomEntry[];
  readonly problems: readonly Problem[];
}

/** The rooms named, in that order; all that are saved when none is named. */
export function chosenRooms(saved: SavedRooms, names: readonly string[]): ChosenRooms {
  if (saved.rooms.length === 0) {
    return { rooms: [], problems: atRooms(saved.problems.length > 0 ? saved.problems : [houseProblems.noRooms()]) };
  }
  const known = saved.rooms.map(({ name }) => name).filter((name) => nameKey(name) !== '');
  const namedBy = (name: string) => saved.rooms.filter((room) => sameName(room.name, name));
  const unknown = names.filter((name) => namedBy(name).length === 0);
  const wanted = names.length === 0 ? saved.rooms : names.flatMap(namedBy);
  return {
    rooms: wanted.flatMap(({ entry }) => (entry ? [entry] : [])),
    problems: atRooms([
      ...unknown.map((name) => houseProblems.noSuchRoom(name, known)),
      ...ofTheTab(saved),
      ...new Set(wanted.flatMap(problemsOf)),
      ...wanted.flatMap((room) => leadsNowhere(room, known)),
    ]),
  };
}

/** What is wrong with the tab itself, not with one of its rooms, such as a line that is there twice. */
function ofTheTab({ rooms, problems }: SavedRooms): readonly string[] {
  const ofRooms = new Set(rooms.flatMap((room) => room.problems));
  return problems.filter((sentence) => !ofRooms.has(sentence));
}

/** A room without a name can be read, and nothing can be said about it, nor a tab be named after it. */
function problemsOf({ name, problems }: SavedRoom): readonly string[] {
  return nameKey(name) === '' && problems.length === 0 ? [tabProblems.noRoomName()] : problems;
}

/** A doorway into a room that is nowhere: the two would be laid apart, though one floor is meant. */
function leadsNowhere({ entry }: SavedRoom, known: readonly string[]): readonly string[] {
  if (!entry) return [];
  const keys = known.map(nameKey);
  return entry.doorways.flatMap(({ floor, leadsTo }, i) => {
    const isNowhere = floor === 'goes on' && nameKey(leadsTo) !== '' && !keys.includes(nameKey(leadsTo));
    return isNowhere ? [problems.noRoomBehind(`${entry.name}, doorway ${i + 1}`, leadsTo)] : [];
  });
}

function atRooms(sentences: readonly string[]): readonly Problem[] {
  return sentences.map((text) => ({ field: 'rooms', text }));
}
