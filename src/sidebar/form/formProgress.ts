/** How far a person has got in a form: what was left, opened, pressed and told. Both pages keep it in the same way. */
import type { Problem } from '../../takeoff/result';
import { type ShownProblems, shownProblems } from './problems';
import { announceNew, pathsOnPage, tellProblems } from './problemsView';

/** Holds what has happened in the form since it was begun. */
export class FormProgress {
  private leftPaths: ReadonlySet<string> = new Set();
  private openSections: ReadonlySet<string> = new Set();
  private isPressed = false;
  /** Whether anything was typed: before that nobody has to fill anything in. */
  private isTyped = false;
  /** Where something is told now. */
  private toldPaths: ReadonlySet<string> = new Set();
  /** Problems that were told aloud. */
  private heard: ReadonlySet<string> = new Set();

  constructor(private readonly form: HTMLElement) {}

  /** Another room or job stands in the form; sections stay open. */
  begin(isTyped: boolean): void {
    this.leftPaths = new Set();
    this.isPressed = false;
    this.isTyped = isTyped;
  }

  typed(): void {
    this.isTyped = true;
  }

  /** A field was left: from now on it is told when it is blank. */
  left(path: string): void {
    if (this.isTyped) this.leftPaths = new Set([...this.leftPaths, path]);
  }

  /** Items of a list go by other numbers now: their fields count as not left yet. */
  renumbered(list: string): void {
    this.leftPaths = new Set([...this.leftPaths].filter((path) => !path.startsWith(`${list}.`)));
  }

  /** The tabs are to be filled: everything is told from now on. */
  press(): void {
    this.isPressed = true;
  }

  /** A section that can be shut was opened or shut. */
  opened(section: string, isOpen: boolean): void {
    const rest = [...this.openSections].filter((other) => other !== section);
    this.openSections = new Set(isOpen ? [...rest, section] : rest);
  }

  isOpen(section: string): boolean {
    return this.openSections.has(section);
  }

  /**
   * Tells these problems and no others, at their fields.
   *
   * @param halfTyped a field that is being typed in: what is wrong in it is told later, unless it was told before
   * @returns what is told where
   */
  tell(problems: readonly Problem[], isBlank: (path: string) => boolean, halfTyped = ''): ShownProblems {
    const { form, leftPaths, isPressed } = this;
    const isReady = ({ field }: Problem) => field !== halfTyped || this.toldPaths.has(field);
    const ready = problems.filter(isReady);
    const shown = shownProblems(ready, { paths: pathsOnPage(form), leftPaths, isPressed, isBlank });
    this.toldPaths = new Set(shown.keys());
    tellProblems(form, shown);
    this.heard = announceNew(shown, this.heard);
    return shown;
  }
}
