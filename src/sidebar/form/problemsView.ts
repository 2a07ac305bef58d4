/** Problems told on the page: a sentence under the field, the field marked as wrong and pointing to the sentence. */
import { byId, element } from '../parts/dom';
import { fieldId, problemId } from './fieldView';

/** Paths of the fields that are on the page now. */
export function pathsOnPage(form: HTMLElement): ReadonlySet<string> {
  const boxes = form.querySelectorAll<HTMLElement>('.problems');
  return new Set([...boxes].map((box) => box.id.slice(problemId('').length)));
}

/** Tells these and no others. Fields keep their focus and what is typed in them. */
export function tellProblems(form: HTMLElement, shown: ReadonlyMap<string, readonly string[]>): void {
  for (const box of form.querySelectorAll<HTMLElement>('.problems')) {
    const path = box.id.slice(problemId('').length);
    const sentences = shown.get(path) ?? [];
    if (box.textContent !== sentences.join('')) {
      box.replaceChildren(...sentences.map((sentence) => element('p', {}, sentence)));
    }
    box.hidden = sentences.length === 0;
    markField(form, path, sentences.length > 0);
    const shut = box.closest('details');
    if (shut && sentences.length > 0) shut.open = true;
  }
}

/** More new problems than this are counted, not read out. */
const MOST_READ_OUT = 2;

/**
 * Tells those who hear the page what is told now and was not before. What is told at the field that is typed into
 * waits until it is left: half a length is no mistake yet.
 *
 * @returns what has been told, for the next time
 */
export function announceNew(
  shown: ReadonlyMap<string, readonly string[]>,
  before: ReadonlySet<string>,
): ReadonlySet<string> {
  const ready = [...shown].filter(([path]) => document.activeElement?.id !== fieldId(path));
  const now = ready.flatMap(([, sentences]) => sentences);
  const fresh = now.filter((sentence) => !before.has(sentence));
  const more = fresh.length - MOST_READ_OUT;
  const rest = more > 0 ? [`${more} more to fix.`] : [];
  if (fresh.length > 0) byId('announced').textContent = [...fresh.slice(0, MOST_READ_OUT), ...rest].join(' ');
  return new Set(now);
}

/** Brings what is told at a field out from under the pane below the form. */
export function uncoverProblem(path: string): void {
  const box = document.getElementById(problemId(path));
  const area = box?.closest('main');
  if (!box || !area || box.hidden) return;
  const edge = Math.min(area.getBoundingClientRect().bottom, window.innerHeight);
  if (box.getBoundingClientRect().bottom > edge) box.scrollIntoView({ block: 'nearest' });
}

/** Goes to a field, in a section that may be shut. */
export function goToField(path: string): void {
  const field = document.getElementById(fieldId(path));
  const shut = field?.closest('details');
  if (shut) shut.open = true;
  field?.scrollIntoView({ block: 'center' });
  field?.focus();
}

/** Goes to the first place where something is told. */
export function goToFirstProblem(form: HTMLElement): void {
  const box = form.querySelector<HTMLElement>('.problems:not([hidden])');
  if (box) goToPlace(box.id.slice(problemId('').length));
}

/** Goes to a field, or to where the problems of a section are told. */
export function goToPlace(path: string): void {
  const box = document.getElementById(problemId(path));
  if (document.getElementById(fieldId(path))) goToField(path);
  else if (box) {
    box.scrollIntoView({ block: 'center' });
    box.tabIndex = -1;
    box.focus();
  }
}

function markField(form: HTMLElement, path: string, isWrong: boolean): void {
  const field = document.getElementById(fieldId(path));
  if (!field || !form.contains(field)) return;
  const described = [field.dataset.help, isWrong ? problemId(path) : undefined].filter((id) => id !== undefined);
  if (isWrong) field.setAttribute('aria-invalid', 'true');
  else field.removeAttribute('aria-invalid');
  if (described.length > 0) field.setAttribute('aria-describedby', described.join(' '));
  else field.removeAttribute('aria-describedby');
}
