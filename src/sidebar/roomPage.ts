/** The page of one room: what is typed, what follows from it, and filling its tabs. */
import type { Units } from '../geometry/length';
import { ownWasteOf } from '../tabs/floorsLaid';
import type { RoomEntry } from '../takeoff/entry';
import type { Problem } from '../takeoff/result';
import { drawingPart } from './drawing/drawingPart';
import type { RoomTabs } from './filling/fillTabs';
import { type FillPart, fillPart } from './filling/fillView';
import { type OnwardPart, onwardPart } from './filling/onwardView';
import { SavedRooms } from './filling/savedRooms';
import { type SavedPart, savedPart } from './filling/savedView';
import { blankDraft, draftOf, entryOf, type ListPath, nextRoom } from './form/draft';
import { echoWords } from './form/echo';
import { exampleRoom } from './form/exampleRoom';
import { fieldId } from './form/fieldView';
import { type FirstLook, firstLookAt } from './form/firstLook';
import { FormProgress } from './form/formProgress';
import {
  type FormState,
  freshState,
  isBlankAt,
  itemCount,
  withAdded,
  withField,
  withMoved,
  withOwn,
  withRemoved,
  withRules,
} from './form/formState';
import { type FormEvents, formSections, type ShownForm, showSettings } from './form/formView';
import { moveButtonId } from './form/itemButtons';
import { goToField, goToFirstProblem, uncoverProblem } from './form/problemsView';
import { otherAim } from './outcome/aims';
import { clearAims, showAims } from './outcome/aimsView';
import { showAsOne } from './outcome/asOneView';
import { showNumbers, showSketchNumbers, showWorking } from './outcome/outcomeView';
import { wrongLine } from './outcome/wrongLine';
import { byId, element } from './parts/dom';
import { watchPresses } from './parts/press';
import { type Calculator, calculatorOf } from './planning/calculator';
import { type Plan, roomsThrough } from './planning/plan';
import type { Planner } from './planning/planner';
import type { PlanQuestion } from './planning/planThread';
import type { Spreadsheet } from './sheetStore';

/** Milliseconds: a second plan is worked out only when nobody is typing. */
const BEFORE_OTHER_AIM = 700;
/** Milliseconds: what is wrong in a field that is typed in is told when a person pauses, or leaves it. */
const BEFORE_TOLD = 500;

/** Starts the page of one room. */
export function startRoomPage(units: Units, spreadsheet: Spreadsheet | null, planner: Planner): void {
  new RoomPage(units, spreadsheet, planner).start();
}

/** Holds what is typed and the last plan. */
class RoomPage {
  private state: FormState;
  private look: FirstLook = { problems: [], sketch: null, nearly: null, walk: null };
  /** Of changes and looks so far: a plan that was asked for before the last of them is of something else. */
  private lookCount = 0;
  private planProblems: readonly Problem[] = [];
  private planned: RoomTabs | null = null;
  /** On top of the area, of the floors laid so far; null before there is one. */
  private ownWaste: number | null = null;
  private aimTimer = 0;
  private tellTimer = 0;
  /** The entry as it was begun, opened or saved: while the same is typed, nothing would be lost. */
  private kept: string;
  private readonly form = byId('form');
  private readonly progress = new FormProgress(this.form);
  private readonly presses = watchPresses();
  private readonly calculator: Calculator;
  private readonly rooms: SavedRooms;
  private readonly savedPart: SavedPart;
  private readonly filling: FillPart;
  private readonly onward: OnwardPart;
  private readonly drawing = drawingPart(byId('drawing'), { pressed: (path) => goToField(path) });
  private readonly wrong = wrongLine(byId('wrong'));

  constructor(
    units: Units,
    private readonly spreadsheet: Spreadsheet | null,
    private readonly planner: Planner,
  ) {
    this.state = freshState(blankDraft(units));
    this.rooms = new SavedRooms(spreadsheet, {
      read: () => this.roomsRead(),
      renamed: (name) => this.renamed(name),
      opened: (room) => this.begin(freshState(draftOf(room)), room),
    });
    this.kept = this.typed();
    const look = () => this.lookAgain();
    const plan = () => this.planAgain();
    this.calculator = calculatorOf({ look, waits: () => showWorking(this.look.sketch), plan }, this.presses);
    this.filling = fillPart(spreadsheet, [this.drawing.foldButton, this.drawing.largeButton(spreadsheet)], {
      wanted: () => this.wanted(),
      opened: () => this.rooms.opened,
      saved: (room) => this.roomSaved(room),
      reopened: (name) => void this.rooms.open(name),
    });
    this.onward = onwardPart(spreadsheet, {
      wanted: async () => {
        const room = await this.wanted();
        return room && { entry: room.entry, others: this.question(room.entry).others };
      },
      work: (question) => planner.onward(question),
      done: () => void this.readOwnWaste(),
    });
    this.savedPart = savedPart(() => this.typed() !== this.kept, {
      opened: (name) => this.rooms.open(name),
      renamed: (name, newName) => this.rooms.rename(name, newName),
      removed: (name) => this.rooms.remove(name),
      begun: () => this.begin(freshState(nextRoom(this.state.draft)), null),
      example: () => this.begin(freshState(draftOf(exampleRoom(this.state.draft.units))), null),
      thrownAway: () => this.begin(freshState(blankDraft(this.state.draft.units)), null),
    });
  }

  start(): void {
    this.form.addEventListener('submit', (event) => event.preventDefault());
    this.form.addEventListener('focusin', (event) => this.drawing.mark(pathOf(event.target)));
    byId('saved').append(this.savedPart.element);
    byId('fill').append(this.filling.element);
    byId('onward').append(this.onward.element);
    this.rebuild(fieldId('shape.length'));
    this.lookAgain();
    void this.rooms.read().then(() => this.readOwnWaste());
  }

  private readonly events: FormEvents = {
    changed: (path, value, isChoice) => {
      if (!isChoice) this.progress.typed();
      this.change(withField(this.state, path, value));
      if (!isChoice) return;
      this.rebuild(fieldId(path));
      if (path === 'units') byId('announced').textContent = this.state.unitsNote;
    },
    left: (path) => {
      this.progress.left(path);
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
      this.progress.renumbered(list);
      this.change(withRemoved(this.state, list, index));
      this.rebuild(`add-${list}`);
    },
    moved: (list, index, by) => {
      this.progress.renumbered(list);
      this.change(withMoved(this.state, list, index, by));
      this.rebuild(moveButtonId(list, index + by, by));
    },
    entered: (list, index) => {
      if (index < itemCount(this.state, list) - 1) this.focusItem(list, index + 1);
      else this.events.added(list);
    },
    opened: (section, isOpen) => this.progress.opened(section, isOpen),
  };

  private change(next: FormState): void {
    this.state = next;
    this.lookCount += 1;
    window.clearTimeout(this.aimTimer);
    showSettings(this.form, this.shown());
    this.calculator.changed();
  }

  /** The entry as typed; tabs are named after the room, without spaces around its name. */
  private entry(): RoomEntry {
    const entry = entryOf(this.state.draft);
    return { ...entry, name: entry.name.trim() || this.rooms.freeName() };
  }

  private typed(): string {
    const entry = entryOf(this.state.draft);
    return JSON.stringify({ ...entry, name: entry.name.trim() });
  }

  private shown(): ShownForm {
    return {
      state: this.state,
      suggestedName: this.rooms.freeName(),
      isOpen: (section) => this.progress.isOpen(section),
    };
  }

  /** The form as it must look now; the keyboard goes to an element of it. */
  private rebuild(focusId: string): void {
    for (const { dataset, open } of this.form.querySelectorAll('details')) {
      this.progress.opened(dataset.section ?? '', open);
    }
    this.form.replaceChildren(...formSections(this.shown(), this.events));
    this.tellProblems();
    this.showAsOne();
    document.getElementById(focusId)?.focus();
    this.drawing.mark(pathOf(document.activeElement));
  }

  private focusItem(list: ListPath, index: number): void {
    const fields = `[data-path^="${list}.${index}."]`;
    this.form.querySelector<HTMLElement>(`${fields} input, ${fields} select`)?.focus();
  }

  /** @returns whether there is anything to plan */
  private lookAgain(): boolean {
    const entry = this.entry();
    this.lookCount += 1;
    this.look = firstLookAt(entry);
    this.planProblems = [];
    this.planned = null;
    // Half a length is no mistake yet.
    this.tellProblems(pathOf(document.activeElement));
    window.clearTimeout(this.tellTimer);
    this.tellTimer = window.setTimeout(() => this.presses.after(() => this.tellProblems()), BEFORE_TOLD);
    this.showAsOne();
    const { sketch, nearly, walk, problems } = this.look;
    this.drawing.show(this.question(entry), sketch ?? nearly ?? walk);
    if (problems.length > 0) showSketchNumbers();
    return problems.length === 0;
  }

  private async planAgain(): Promise<void> {
    const entry = this.entry();
    const { lookCount } = this;
    const plan = await this.planner.plan(this.question(entry));
    if (plan === null || this.lookCount !== lookCount) return;
    if (plan.status === 'problems') {
      this.planProblems = plan.problems;
      this.tellProblems();
      return showSketchNumbers();
    }
    this.planned = { entry, takeoff: plan.takeoff };
    this.drawing.show(this.question(entry), plan.takeoff);
    showNumbers(plan.takeoff, this.ownWaste, (rules) => this.takeRules(rules, 'rules.layDirection'));
    this.tellProblems();
    clearAims();
    this.aimTimer = window.setTimeout(
      () => this.presses.after(() => void this.compareAims(entry, plan)),
      BEFORE_OTHER_AIM,
    );
  }

  private question(entry: RoomEntry): PlanQuestion {
    return { entry, others: this.state.isAsOne ? this.roomsThrough() : [] };
  }

  /** What the floor would be if it were planned for the other aim: looked at only when a person has paused. */
  private async compareAims(entry: RoomEntry, { takeoff }: Extract<Plan, { status: 'planned' }>): Promise<void> {
    // Of another room that was opened meanwhile, this would overtake the plan.
    if (this.planned?.takeoff !== takeoff) return;
    const aim = otherAim(entry.rules.aim);
    const other = await this.planner.plan(this.question({ ...entry, rules: { ...entry.rules, aim } }));
    if (other?.status !== 'planned' || this.planned?.takeoff !== takeoff) return;
    showAims(entry.rules.aim, takeoff, other.takeoff, (wanted) => this.takeRules({ aim: wanted }, 'rules.aim'));
  }

  private takeRules(rules: Partial<RoomEntry['rules']>, path: string): void {
    this.change(withRules(this.state, rules));
    this.rebuild('');
    goToField(path);
  }

  private tellProblems(halfTyped = ''): void {
    const all = [...this.look.problems, ...this.planProblems];
    const isBlank = (path: string) => isBlankAt(this.state, path);
    const shown = this.progress.tell(all, isBlank, halfTyped);
    this.wrong.show(all, shown, this.planned?.takeoff ?? null);
    byId('echo').textContent = echoWords(this.entry(), this.look);
    if (all.length === 0) this.filling.putRight();
  }

  private roomsThrough(): readonly RoomEntry[] {
    return roomsThrough(this.entry(), this.rooms.all);
  }

  private showAsOne(): void {
    const chosen = (isAsOne: boolean) => this.change({ ...this.state, isAsOne });
    showAsOne(byId('as-one'), this.roomsThrough(), this.state.isAsOne, chosen);
  }

  /** The room to fill tabs with. Or none, after the page has said why. */
  private async wanted(): Promise<RoomTabs | null> {
    this.progress.press();
    await this.rooms.isRead;
    await this.calculator.finish();
    this.tellProblems();
    if (this.planned && this.look.problems.length === 0) return this.planned;
    goToFirstProblem(this.form);
    return null;
  }

  private roomsRead(): void {
    const { all, problems } = this.rooms;
    const names = all.map(({ name }) => name);
    this.savedPart.show(names, problems);
    byId('room-names').replaceChildren(...names.map((value) => element('option', { value })));
    // The name that is suggested may be taken now.
    const box = document.getElementById(fieldId('name')) as HTMLInputElement | null;
    if (box) box.placeholder = this.rooms.freeName();
    showSettings(this.form, this.shown());
    this.showAsOne();
  }

  /** Of the floors that are laid: shown with the next plan. Without it the page is the same but for one line. */
  private async readOwnWaste(): Promise<void> {
    if (this.spreadsheet) this.ownWaste = await ownWasteOf(this.spreadsheet).catch(() => null);
  }

  private roomSaved(entry: RoomEntry): void {
    const named = withField(this.state, 'name', this.state.draft.name.trim() || entry.name);
    if (named.draft.name !== this.state.draft.name) {
      this.state = named;
      const box = document.getElementById(fieldId('name')) as HTMLInputElement | null;
      if (box) box.value = entry.name;
    }
    this.kept = JSON.stringify(entry);
    this.rooms.saved(entry);
    showSettings(this.form, this.shown());
  }

  private renamed(name: string): void {
    const wasTyped = this.typed() !== this.kept;
    this.state = withField(this.state, 'name', name);
    if (!wasTyped) this.kept = this.typed();
    this.rebuild('');
    this.calculator.changed();
  }

  /** @param opened the room it stands for in the tab of rooms; null for one that is not there */
  private begin(state: FormState, opened: RoomEntry | null): void {
    this.state = state;
    this.rooms.opened = opened;
    this.kept = this.typed();
    this.progress.begin(state.draft.name !== '');
    this.filling.begin();
    this.onward.begin();
    this.rebuild('');
    this.form.querySelector('input')?.focus();
    this.calculator.changed();
  }
}

/** The path of the field that an element belongs to; '' for any other. */
function pathOf(target: EventTarget | null): string {
  return (target as Element | null)?.closest<HTMLElement>('[data-path]')?.dataset.path ?? '';
}
