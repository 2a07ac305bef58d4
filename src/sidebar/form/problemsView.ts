/** Problems told on the page: a sentence under the field, the field marked as wrong and pointing to the sentence. */
import { element } from '../parts/dom';
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

/** Goes to the first place where something is told. */
export function goToFirstProblem(form: HTMLElement): void {
  const box = form.querySelector<HTMLElement>('.problems:not([hidden])');
  if (!box) return;
  const field = document.getElementById(fieldId(box.id.slice(problemId('').length)));
  box.scrollIntoView({ block: 'center' });
  const place = field ?? box;
  if (!field) box.tabIndex = -1;
  place.focus();
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
