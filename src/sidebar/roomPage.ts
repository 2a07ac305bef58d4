/** The page of one room: what is typed, what follows from it, and filling its tabs. */
import type { Units } from '../geometry/length';
import type { FloorPiece, Takeoff } from '../takeoff/result';
import { type Calculator, calculatorOf } from './calculator';
import { byId, element } from './dom';
import { blankDraft, entryOf, type ListPath } from './draft';
import { drawingOf } from './drawing';
import { drawingElement } from './drawingView';
import { fieldId } from './fieldView';
import type { RoomTabs } from './fillTabs';
import { fillPart } from './fillView';
import { type FirstLook, firstLookAt } from './firstLook';
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
  withSection,
} from './formState';
import { type FormEvents, formSections } from './formView';
import { headline } from './numbers';
import { numbersElement } from './numbersView';
import { pieceWords } from './pieceWords';
import { planOf } from './plan';
import { shownProblems } from './problems';
import { goToFirstProblem, pathsOnPage, tellProblems } from './problemsView';
import type { Spreadsheet } from './sheetStore';

/** The drawing as it fits into the sidebar. */
const PAPER = { width: 280, height: 250 };

export function startRoomPage(units: Units, spreadsheet: Spreadsheet | null): void {
  new RoomPage(units, spreadsheet).start();
}

/** Holds what is typed and the last plan made of it. */
class RoomPage {
  private state: FormState;
  private look: FirstLook = { problems: [], sketch: null };
  private planned: RoomTabs | null = null;
  private readonly form = byId('form');
  private readonly calculator: Calculator;

  constructor(
    units: Units,
    private readonly spreadsheet: Spreadsheet | null,
  ) {
    this.state = freshState(blankDraft(units));
    this.calculator = calculatorOf({
      look: () => this.lookAgain(),
      waits: () => this.sayHeadline('Working ...'),
      plan: () => this.planAgain(),
    });
  }

  start(): void {
    this.form.addEventListener('submit', (event) => event.preventDefault());
    byId('fill').append(fillPart(this.spreadsheet, () => this.wanted()));
    this.rebuild('');
    this.lookAgain();
  }

  private readonly events: FormEvents = {
    changed: (path, value, isChoice) => {
      this.change(withField(this.state, path, value));
      if (isChoice) this.rebuild(fieldId(path));
    },
    left: (path) => this.change(withLeft(this.state, path)),
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
      this.rebuild(`${by < 0 ? 'up' : 'down'}-${list}-${index + by}`);
    },
    opened: (section, isOpen) => {
      this.state = withSection(this.state, section, isOpen);
    },
  };

  private change(next: FormState): void {
    this.state = next;
    this.calculator.changed();
  }

  /** The form as it must look now; the keyboard goes to an element of it. */
  private rebuild(focusId: string): void {
    this.form.replaceChildren(...formSections(this.state, this.events));
    this.tellProblems();
    document.getElementById(focusId)?.focus();
  }

  private focusItem(list: ListPath, index: number): void {
    const fields = `[data-path^="${list}.${index}."]`;
    this.form.querySelector<HTMLElement>(`${fields} input, ${fields} select`)?.focus();
  }

  /** @returns whether there is anything to plan */
  private lookAgain(): boolean {
    this.look = firstLookAt(entryOf(this.state.draft));
    this.tellProblems();
    // A room without a name can be planned, and is drawn; only its tabs cannot be named.
    const isPlannable = this.look.problems.every(({ field }) => field === 'name');
    if (!isPlannable) this.showNoPlan();
    return isPlannable;
  }

  private tellProblems(): void {
    const { leftPaths, isPressed } = this.state;
    const fields = { paths: pathsOnPage(this.form), leftPaths, isPressed };
    const isBlank = (path: string) => isBlankAt(this.state, path);
    tellProblems(this.form, shownProblems(this.look.problems, { ...fields, isBlank }));
  }

  private planAgain(): void {
    const entry = entryOf(this.state.draft);
    const plan = planOf(entry);
    if (plan.status === 'planned') {
      this.planned = { entry, takeoff: plan.takeoff };
      this.showPlan(plan.takeoff);
    } else {
      this.showNoPlan();
      this.sayHeadline(plan.text);
    }
  }

  private showPlan(takeoff: Takeoff): void {
    const words = (piece: FloorPiece) => pieceWords(piece, takeoff.units);
    const shown = (piece: FloorPiece) => byId('piece').replaceChildren(words(piece));
    byId('drawing').replaceChildren(drawingElement(drawingOf(takeoff, PAPER), { words, shown, opened: shown }));
    byId('numbers').replaceChildren(...numbersElement(takeoff));
    this.sayHeadline(headline(takeoff));
  }

  private showNoPlan(): void {
    this.planned = null;
    const { sketch } = this.look;
    const hint = element('p', { class: 'help' }, 'The floor is drawn here as you type.');
    byId('drawing').replaceChildren(sketch ? drawingElement(drawingOf(sketch, PAPER), null) : hint);
    byId('numbers').replaceChildren();
    byId('piece').replaceChildren();
    this.sayHeadline('');
  }

  private sayHeadline(words: string): void {
    const line = byId('headline');
    if (line.textContent !== words) line.textContent = words;
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
}
