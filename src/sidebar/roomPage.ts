/** The page of one room: what is typed, what follows from it, and filling its tabs. */
import type { Units } from '../geometry/length';
import { removeRoom, renameRoom, savedRooms } from '../tabs/roomTabs';
import type { WrittenTab } from '../tabs/tabStore';
import type { RoomEntry } from '../takeoff/entry';
import type { Problem } from '../takeoff/result';
import { nameKey } from '../takeoff/text/names';
import type { RoomTabs } from './filling/fillTabs';
import { type FillPart, fillPart } from './filling/fillView';
import { type SavedPart, savedPart } from './filling/savedView';
import { type Calculator, calculatorOf } from './form/calculator';
import { blankDraft, draftOf, entryOf, type ListPath, nextRoom } from './form/draft';
import { fieldId } from './form/fieldView';
import { type FirstLook, firstLookAt } from './form/firstLook';
import {
  type FormState,
  freshState,
  isBlankAt,
  itemCount,
  withAdded,
  withField,
  withLeft,
  withMoved,
  withOwn,
  withRemoved,
  withRules,
  withSection,
} from './form/formState';
import { type FormEvents, formSections } from './form/formView';
import { moveButtonId } from './form/itemButtons';
import { shownProblems } from './form/problems';
import { announceNew, goToFirstProblem, pathsOnPage, tellProblems, uncoverProblem } from './form/problemsView';
import { otherAim } from './outcome/aims';
import { clearAims, showAims } from './outcome/aimsView';
import { showAsOne } from './outcome/asOneView';
import { showPlan, showSketch, showWorking } from './outcome/outcomeView';
import { type Plan, planOf, roomsThrough } from './outcome/plan';
import { byId, element } from './parts/dom';
import { watchPresses } from './parts/press';
import { keepReachable } from './parts/scrollArea';
import { NOT_CONNECTED, type Spreadsheet } from './sheetStore';

/** Milliseconds: a second plan is worked out only when nobody is typing. */
const BEFORE_OTHER_AIM = 700;

/** Starts the page of one room. */
export function startRoomPage(units: Units, spreadsheet: Spreadsheet | null): void {
  new RoomPage(units, spreadsheet).start();
}

/** Holds what is typed, the rooms that are saved, and the last plan. */
class RoomPage {
  private state: FormState;
  private look: FirstLook = { problems: [], sketch: null };
  private planProblems: readonly Problem[] = [];
  private planned: RoomTabs | null = null;
  private aimTimer = 0;
  private saved: readonly RoomEntry[] = [];
  /** The entry as it was begun, opened or saved: while the same is typed, nothing would be lost. */
  private kept: string;
  /** The room as it was last read from its tab or written there. */
  private opened: RoomEntry | null = null;
  private readonly form = byId('form');
  private readonly presses = watchPresses();
  private readonly calculator: Calculator;
  private readonly savedPart: SavedPart;
  private readonly filling: FillPart;
  /** Whether anything was typed since the room was begun: before that nobody has to fill anything in. */
  private isTyped = false;
  /** Problems that were told aloud. */
  private heard: ReadonlySet<string> = new Set();

  constructor(
    units: Units,
    private readonly spreadsheet: Spreadsheet | null,
  ) {
    this.state = freshState(blankDraft(units));
    this.kept = this.typed();
    const look = () => this.lookAgain();
    this.calculator = calculatorOf({ look, waits: showWorking, plan: () => this.planAgain() }, this.presses);
    this.filling = fillPart(spreadsheet, {
      wanted: () => this.wanted(),
      opened: () => this.opened,
      saved: (room) => this.roomSaved(room),
      reopened: (name) => void this.open(name),
    });
    this.savedPart = savedPart(() => this.typed() !== this.kept, {
      opened: (name) => this.open(name),
      renamed: (name, newName) => this.rename(name, newName),
      removed: (name) => this.remove(name),
      begun: () => this.begin(freshState(nextRoom(this.state.draft)), null),
    });
  }

  start(): void {
    this.form.addEventListener('submit', (event) => event.preventDefault());
    byId('saved').append(this.savedPart.element);
    byId('fill').append(this.filling.element);
    keepReachable(byId('piece'), 'The piece pointed at');
    this.rebuild(fieldId('name'));
    this.lookAgain();
    void this.readSaved();
  }

  private readonly events: FormEvents = {
    changed: (path, value, isChoice) => {
      if (!isChoice) this.isTyped = true;
      this.change(withField(this.state, path, value));
      if (!isChoice) return;
      this.rebuild(fieldId(path));
      if (path === 'units') byId('announced').textContent = this.state.unitsNote;
    },
    left: (path) => {
      if (this.isTyped) this.state = withLeft(this.state, path);
      this.presses.after(() => {
        if (!this.calculator.hurry()) this.tellProblems();
        uncoverProblem(path);
      });
    },
    ownChosen: (path, isOwn) => {
      this.change(withOwn(this.state, path, isOwn));
      this.rebuild(fieldId(path));
    },
    added: (list) => {
      this.change(withAdded(this.state, list));
      this.rebuild('');
      this.focusItem(list, itemCount(this.state, list) - 1);
    },
    removed: (list, index) => {
      this.change(withRemoved(this.state, list, index));
      this.rebuild(`add-${list}`);
    },
    moved: (list, index, by) => {
      this.change(withMoved(this.state, list, index, by));
      this.rebuild(moveButtonId(list, index + by, by));
    },
    opened: (section, isOpen) => {
      this.state = withSection(this.state, section, isOpen);
    },
  };

  private change(next: FormState): void {
    this.state = next;
    window.clearTimeout(this.aimTimer);
    this.calculator.changed();
  }

  /** The entry as typed; tabs are named after the room, without spaces around its name. */
  private entry(): RoomEntry {
    const entry = entryOf(this.state.draft);
    return { ...entry, name: entry.name.trim() };
  }

  private typed(): string {
    return JSON.stringify(this.entry());
  }

  /** The form as it must look now; the keyboard goes to an element of it. */
  private rebuild(focusId: string): void {
    this.form.replaceChildren(...formSections(this.state, this.events));
    this.tellProblems();
    this.showAsOne();
    document.getElementById(focusId)?.focus();
  }

  private focusItem(list: ListPath, index: number): void {
    const fields = `[data-path^="${list}.${index}."]`;
    this.form.querySelector<HTMLElement>(`${fields} input, ${fields} select`)?.focus();
  }

  /** @returns whether there is anything to plan */
  private lookAgain(): boolean {
    this.look = firstLookAt(this.entry());
    this.planProblems = [];
    this.planned = null;
    this.tellProblems();
    this.showAsOne();
    // A room without a name can be planned, and is drawn; only its tabs cannot be named.
    const isPlannable = this.look.problems.every(({ field }) => field === 'name');
    if (!isPlannable) showSketch(this.look.sketch);
    return isPlannable;
  }

  private planAgain(): void {
    const entry = this.entry();
    const plan = planOf(entry, this.state.isAsOne ? this.roomsThrough() : []);
    if (plan.status === 'planned') {
      this.planned = { entry, takeoff: plan.takeoff };
      showPlan(plan.takeoff, ({ rules }) => {
        this.change(withRules(this.state, rules));
        this.rebuild(fieldId('rules.layDirection'));
      });
      clearAims();
      this.aimTimer = window.setTimeout(
        () => this.presses.after(() => this.compareAims(entry, plan)),
        BEFORE_OTHER_AIM,
      );
      return;
    }
    this.planProblems = plan.problems;
    this.tellProblems();
    showSketch(this.look.sketch);
  }

  /** What the floor would be if it were planned for the other aim: looked at only when a person has paused. */
  private compareAims(entry: RoomEntry, { takeoff }: Extract<Plan, { status: 'planned' }>): void {
    const aim = otherAim(entry.rules.aim);
    const other = planOf({ ...entry, rules: { ...entry.rules, aim } }, this.state.isAsOne ? this.roomsThrough() : []);
    if (other.status !== 'planned') return;
    showAims(entry.rules.aim, takeoff, other.takeoff, (wanted) => {
      this.change(withRules(this.state, { aim: wanted }));
      this.rebuild(fieldId('rules.aim'));
    });
  }

  private tellProblems(): void {
    const { leftPaths, isPressed } = this.state;
    const fields = { paths: pathsOnPage(this.form), leftPaths, isPressed };
    const isBlank = (path: string) => isBlankAt(this.state, path);
    const all = [...this.look.problems, ...this.planProblems];
    const shown = shownProblems(all, { ...fields, isBlank });
    tellProblems(this.form, shown);
    this.heard = announceNew(shown, this.heard);
    if (all.length === 0) this.filling.putRight();
  }

  private roomsThrough(): readonly RoomEntry[] {
    return roomsThrough(this.entry(), this.saved);
  }

  private showAsOne(): void {
    const chosen = (isAsOne: boolean) => this.change({ ...this.state, isAsOne });
    showAsOne(byId('as-one'), this.roomsThrough(), this.state.isAsOne, chosen);
  }

  /** The room to fill tabs with. Or none, after the page has said why. */
  private wanted(): RoomTabs | null {
    this.state = { ...this.state, isPressed: true };
    this.calculator.finish();
    this.tellProblems();
    if (this.planned && this.look.problems.length === 0) return this.planned;
    goToFirstProblem(this.form);
    return null;
  }

  private async readSaved(): Promise<void> {
    if (!this.spreadsheet) return;
    try {
      const { rooms, problems } = await savedRooms(this.spreadsheet);
      this.showSaved(
        rooms.flatMap(({ entry }) => (entry ? [entry] : [])),
        problems,
      );
    } catch (error) {
      this.showSaved(this.saved, [(error as Error).message]);
    }
  }

  private showSaved(rooms: readonly RoomEntry[], problems: readonly string[]): void {
    this.saved = rooms;
    this.savedPart.show(
      rooms.map(({ name }) => name),
      problems,
    );
    byId('room-names').replaceChildren(...rooms.map(({ name }) => element('option', { value: name })));
    this.showAsOne();
  }

  private roomSaved(entry: RoomEntry): void {
    this.kept = JSON.stringify(entry);
    this.opened = entry;
    void this.readSaved();
  }

  /** As the tab says: a cell changed there counts. @returns sentences when the room cannot be opened */
  private async open(name: string): Promise<readonly string[]> {
    await this.readSaved();
    const entry = this.saved.find((room) => nameKey(room.name) === nameKey(name));
    if (!entry) return [`${name} was not opened: see below.`];
    this.begin(freshState(draftOf(entry)), entry);
    return [];
  }

  private async rename(name: string, newName: string): Promise<readonly string[]> {
    if (!this.spreadsheet) return [NOT_CONNECTED];
    const said = this.savedAgain(await renameRoom(this.spreadsheet, name, newName));
    await this.readSaved();
    if (said.length > 0) return said;
    const wanted = newName.trim();
    if (this.opened && nameKey(this.opened.name) === nameKey(name)) {
      const wasTyped = this.typed() !== this.kept;
      this.opened = { ...this.opened, name: wanted };
      this.state = withField(this.state, 'name', wanted);
      if (!wasTyped) this.kept = this.typed();
      this.rebuild('');
      this.calculator.changed();
    }
    return [
      `${name} is ${wanted} now. Fill its tabs to write the new name in them. If the job names it, change it there.`,
    ];
  }

  private async remove(name: string): Promise<readonly string[]> {
    if (!this.spreadsheet) return [NOT_CONNECTED];
    const said = this.savedAgain(await removeRoom(this.spreadsheet, name));
    await this.readSaved();
    if (said.length > 0) return said;
    if (this.opened && nameKey(this.opened.name) === nameKey(name)) this.opened = null;
    return [`${name} is no longer saved. What you typed for it stays here until you open or begin another room.`];
  }

  private savedAgain(answer: WrittenTab | readonly string[]): readonly string[] {
    return 'tab' in answer ? [] : answer;
  }

  /** @param opened the room it stands for in the tab of rooms; null for one that is not there */
  private begin(state: FormState, opened: RoomEntry | null): void {
    this.state = state;
    this.opened = opened;
    this.kept = this.typed();
    this.isTyped = state.draft.name !== '';
    this.rebuild(fieldId('name'));
    this.calculator.changed();
  }
}
