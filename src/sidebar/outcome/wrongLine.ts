/** The line of the foot that says what is wrong, or what is still to be typed, and leads there. */
import { distinct, isFilled } from '../../geometry/lists';
import type { Problem, Takeoff } from '../../takeoff/result';
import { fieldId } from '../form/fieldView';
import type { ShownProblems } from '../form/problems';
import { goToField, goToPlace } from '../form/problemsView';
import { button } from '../parts/dom';
import { rowFaultsOf } from './rowFaults';

/** The line, to be brought up to date after everything that is typed. */
export interface WrongLine {
  /** @param shown what is told at fields; the rest of the problems are fields nobody has come to yet */
  show(problems: readonly Problem[], shown: ShownProblems, plan: Takeoff | null): void;
}

/** What stands on the line, how it looks, and where it leads. */
interface Told {
  readonly words: string;
  readonly look: 'wrong' | 'to-do' | 'to-know';
  go(): void;
}

/** Fills its place. */
export function wrongLine(place: HTMLElement): WrongLine {
  let told: Told | null = null;
  const line = button('', () => told?.go(), { class: 'wrong-line', hidden: true });
  place.append(line);
  return {
    show(problems, shown, plan) {
      told = wrongOf(shown) ?? toDoOf(problems) ?? brokenOf(plan) ?? toKnowOf(plan);
      line.hidden = told === null;
      line.textContent = line.title = told?.words ?? '';
      line.dataset.look = told?.look ?? '';
    },
  };
}

function wrongOf(shown: ShownProblems): Told | null {
  const [first] = shown;
  if (!first) return null;
  const [path, sentences] = first;
  const count = [...shown.values()].flat().length;
  const words = count === 1 ? sentences[0] : `${count} to fix. ${sentences[0]}`;
  return { words, look: 'wrong', go: () => goToPlace(path) };
}

function toDoOf(problems: readonly Problem[]): Told | null {
  if (problems.length === 0) return null;
  const names = distinct(problems.map(({ field }) => labelAt(field))).filter(isFilled);
  return { words: `Still to type: ${names.join(', ')}`, look: 'to-do', go: () => goToField(problems[0].field) };
}

/** What the field is called, without its unit. */
function labelAt(path: string): string {
  const label = document.querySelector(`label[for="${CSS.escape(fieldId(path))}"]`);
  return label?.firstChild?.textContent?.trim().toLowerCase() ?? '';
}

function brokenOf(plan: Takeoff | null): Told | null {
  const faults = plan ? rowFaultsOf(plan) : [];
  if (faults.length === 0) return null;
  const [{ words, field }] = faults;
  return {
    words: faults.length === 1 ? words : `${faults.length} places to look at. ${words}`,
    look: 'wrong',
    go: () => goToField(field),
  };
}

function toKnowOf(plan: Takeoff | null): Told | null {
  const [first] = plan?.notes ?? [];
  if (!plan || first === undefined) return null;
  const count = plan.notes.length;
  const go = () => document.getElementById('to-know')?.scrollIntoView({ block: 'start' });
  return { words: `${count} to know. ${first}`, look: 'to-know', go };
}
