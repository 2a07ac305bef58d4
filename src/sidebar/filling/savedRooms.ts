/** The rooms that are saved in the spreadsheet, as the page last read them, and which of them is open. */
import { removeRoom, renameRoom, savedRooms } from '../../tabs/roomTabs';
import type { WrittenTab } from '../../tabs/tabStore';
import type { RoomEntry } from '../../takeoff/entry';
import { nameKey, sameName } from '../../takeoff/text/names';
import { NOT_CONNECTED, type Spreadsheet } from '../sheetStore';

/** What the page does when something has become of them. */
export interface RoomsEvents {
  /** They were read again. */
  read(): void;
  /** The room that is open goes by another name now. */
  renamed(name: string): void;
  /** A room is to be opened. */
  opened(room: RoomEntry): void;
}

/** Holds what was read. Sentences that come back are to be told. */
export class SavedRooms {
  all: readonly RoomEntry[] = [];
  problems: readonly string[] = [];
  /** The room as it was last read from its tab or written there; null when the page shows none of them. */
  opened: RoomEntry | null = null;
  /** Done when the rooms are known as far as they will be. */
  isRead: Promise<void> = Promise.resolve();

  constructor(
    private readonly store: Spreadsheet | null,
    private readonly events: RoomsEvents,
  ) {}

  read(): Promise<void> {
    this.isRead = this.readNow();
    return this.isRead;
  }

  private async readNow(): Promise<void> {
    if (!this.store) return;
    try {
      const { rooms, problems } = await savedRooms(this.store);
      this.all = rooms.flatMap(({ entry }) => (entry ? [entry] : []));
      this.problems = problems;
    } catch (error) {
      this.problems = [(error as Error).message];
    }
    this.events.read();
  }

  /** `Room 1`, or the next number that no saved room has. */
  freeName(): string {
    const taken = new Set(this.all.map(({ name }) => nameKey(name)));
    let number = 1;
    while (taken.has(nameKey(`Room ${number}`))) number += 1;
    return `Room ${number}`;
  }

  /** A room was written into its tab. */
  saved(entry: RoomEntry): void {
    this.opened = entry;
    void this.read();
  }

  /** As the tab says: a cell changed there counts. */
  async open(name: string): Promise<readonly string[]> {
    await this.read();
    const entry = this.all.find((room) => sameName(room.name, name));
    if (!entry) return [`${name} was not opened: see below.`];
    this.events.opened(entry);
    return [];
  }

  async rename(name: string, newName: string): Promise<readonly string[]> {
    if (!this.store) return [NOT_CONNECTED];
    const said = sentencesOf(await renameRoom(this.store, name, newName));
    await this.read();
    if (said.length > 0) return said;
    const wanted = newName.trim();
    if (this.opened && this.isOpen(name)) {
      this.opened = { ...this.opened, name: wanted };
      this.events.renamed(wanted);
    }
    return [
      `${name} is ${wanted} now. Fill its tabs to write the new name in them. If the job names it, change it there.`,
    ];
  }

  async remove(name: string): Promise<readonly string[]> {
    if (!this.store) return [NOT_CONNECTED];
    const said = sentencesOf(await removeRoom(this.store, name));
    await this.read();
    if (said.length > 0) return said;
    if (this.isOpen(name)) this.opened = null;
    return [`${name} is no longer saved. What you typed for it stays here until you open or begin another room.`];
  }

  private isOpen(name: string): boolean {
    return this.opened !== null && sameName(this.opened.name, name);
  }
}

function sentencesOf(answer: WrittenTab | readonly string[]): readonly string[] {
  return 'tab' in answer ? [] : answer;
}
