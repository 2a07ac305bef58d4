/** The page of the whole job: what is typed, its problems, the order and the homeowner's page. */
import type { Units } from '../geometry/length';
import { blankItem, emptyHouse, type HouseEntry } from '../order/houseEntry';
import { HOUSE_SECTIONS } from '../order/houseFields';
import { readHouse } from '../order/readHouse';
import { checkedHouse } from '../tabs/checkedHouse';
import { fillHomeowner, fillOrder, type JobAnswer, openJob, saveJob } from '../tabs/jobTabs';
import type { Problem } from '../takeoff/result';
import { busyButton, newTurn } from './busyButton';
import { byId, element } from './dom';
import { fieldId } from './fieldView';
import { wayTo } from './fillView';
import { jobItems, shownValue, withJobItems, withJobUnits, withJobValue } from './job';
import { JOB, type JobFormEvents, jobSections } from './jobFormView';
import { secondsText } from './numbers';
import { shownProblems } from './problems';
import { goToFirstProblem, pathsOnPage, tellProblems } from './problemsView';
import { NOT_CONNECTED, type Spreadsheet } from './sheetStore';

/** The page of the whole job, for the page around it. */
export interface JobPart {
  /** The page comes into view: the first time the saved job is opened, and always the rooms are read. */
  shown(): void;
}

/** Starts the page of the whole job, out of view. */
export function startJobPage(units: Units, spreadsheet: Spreadsheet | null): JobPart {
  const page = new JobPage(units, spreadsheet);
  page.start();
  return page;
}

/** Waits so long after the last key before problems are looked for, milliseconds. */
const PAUSE = 250;

/** Holds what is typed and what is wrong with it. */
class JobPage implements JobPart {
  private job: HouseEntry;
  private isOpened = false;
  private rooms: readonly string[] = [];
  private problems: readonly Problem[] = [];
  private leftPaths: ReadonlySet<string> = new Set();
  private openSections: ReadonlySet<string> = new Set();
  private isPressed = false;
  private timer = 0;
  private readonly form = byId('job-form');
  private readonly told = element('p', { role: 'status', class: 'told' });
  private readonly results = element('div', { class: 'ways-to-tabs' });

  constructor(
    units: Units,
    private readonly spreadsheet: Spreadsheet | null,
  ) {
    this.job = emptyHouse(units);
  }

  start(): void {
    const save = (store: Spreadsheet) => saveJob(store, this.job);
    const turn = newTurn();
    const at = (words: string, doing: string, work: (store: Spreadsheet) => Promise<JobAnswer>, look = {}) =>
      busyButton(words, () => this.fill(doing, work, work === save), look, turn);
    this.form.addEventListener('submit', (event) => event.preventDefault());
    byId('job-fill').append(
      at('Fill the order', 'Planning every room and filling the order', (store) => fillOrder(store, this.job), {
        class: 'main',
      }),
      element(
        'div',
        { class: 'steps' },
        at("Fill the homeowner's page", "Filling the homeowner's page", (store) => fillHomeowner(store, this.job)),
        at('Save', 'Saving the job', save),
      ),
      this.told,
      this.results,
    );
    this.rebuild('');
  }

  shown(): void {
    if (this.spreadsheet) void this.open(this.spreadsheet);
  }

  private readonly events: JobFormEvents = {
    changed: (fieldPath, value, isChoice) => {
      const path = fieldPath.slice(JOB.length);
      if (path === 'units') this.change(withJobUnits(this.job, value === 'us' ? 'us' : 'metric'));
      else this.change(withJobValue(this.job, path, value));
      if (isChoice && path === 'units') this.rebuild(fieldId(fieldPath));
    },
    left: (fieldPath) => {
      this.leftPaths = new Set([...this.leftPaths, fieldPath]);
      this.look();
    },
    ownChosen: () => {},
    added: (at) => {
      const items = this.itemsAt(at);
      this.change(withJobItems(this.job, at, [...items, blankItem(at as 'trims')]));
      this.rebuild('');
      this.form.querySelector<HTMLElement>(`[data-path^="${JOB}${at}.${items.length}."] input`)?.focus();
    },
    removed: (at, index) => {
      this.change(
        withJobItems(
          this.job,
          at,
          this.itemsAt(at).filter((_, i) => i !== index),
        ),
      );
      this.rebuild(`add-${JOB}${at}`);
    },
    opened: (at, isOpen) => {
      const rest = [...this.openSections].filter((other) => other !== at);
      this.openSections = new Set(isOpen ? [...rest, at] : rest);
    },
  };

  private itemsAt(at: string): readonly object[] {
    return HOUSE_SECTIONS.filter((section) => section.at === at).flatMap((section) => jobItems(this.job, section));
  }

  private change(job: HouseEntry): void {
    this.job = job;
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.look(), PAUSE);
  }

  private rebuild(focusId: string): void {
    const { job, openSections, rooms } = this;
    this.form.replaceChildren(...jobSections({ job, openSections, rooms }, this.events));
    this.tell();
    document.getElementById(focusId)?.focus();
  }

  private look(): void {
    const checked = checkedHouse(this.job);
    const read = checked.ok ? readHouse(checked.entry) : { status: 'problems' as const, problems: checked.problems };
    this.problems = read.status === 'problems' ? read.problems : [];
    this.tell();
  }

  private tell(): void {
    const paths = pathsOnPage(this.form);
    const { leftPaths, isPressed } = this;
    const isBlank = (path: string) =>
      document.getElementById(fieldId(path)) !== null && this.valueAt(path.slice(JOB.length)) === '';
    const placed = this.problems.map(({ field, text }) => ({ field: placeOf(`${JOB}${field}`, paths), text }));
    tellProblems(this.form, shownProblems(placed, { paths, leftPaths, isPressed, isBlank }));
  }

  private valueAt(path: string): string {
    const part = (whole: unknown, key: string) => (whole as Record<string, unknown> | undefined)?.[key];
    return String(shownValue(path.split('.').reduce<unknown>(part, this.job))).trim();
  }

  private async open(store: Spreadsheet): Promise<void> {
    try {
      const { entry, rooms, problems } = await openJob(store, this.job.units);
      this.rooms = rooms;
      if (!this.isOpened) {
        this.job = entry;
        this.problems = problems;
        this.isPressed = problems.length > 0;
      }
      this.isOpened = true;
      this.rebuild('');
    } catch (error) {
      this.told.textContent = (error as Error).message;
    }
  }

  private async fill(
    doing: string,
    work: (store: Spreadsheet) => Promise<JobAnswer>,
    mayBeHalf = false,
  ): Promise<void> {
    this.results.replaceChildren();
    this.isPressed = true;
    this.look();
    // A job can be put aside half typed; it cannot be ordered so.
    if (this.problems.length > 0 && !mayBeHalf) {
      this.told.textContent = 'Not filled yet: put right what is marked above.';
      goToFirstProblem(this.form);
      return;
    }
    if (!this.spreadsheet) {
      this.told.textContent = NOT_CONNECTED;
      return;
    }
    this.told.textContent = `${doing} ...`;
    const start = performance.now();
    try {
      // A moment for the page to show what it is about to do.
      await new Promise((resolve) => window.setTimeout(resolve, 30));
      this.answered(await work(this.spreadsheet), performance.now() - start);
    } catch (error) {
      this.told.textContent = `${(error as Error).message} Nothing you typed is lost: press the button to try again.`;
    }
  }

  private answered(answer: JobAnswer, ms: number): void {
    if (answer.status === 'problems') {
      this.problems = answer.problems;
      this.tell();
      this.told.textContent = 'Not filled: see what is marked above.';
      goToFirstProblem(this.form);
      return;
    }
    const { tabs, toPay, missing, pdfLink } = answer;
    const pay =
      toPay === ''
        ? ''
        : ` The homeowner pays ${toPay}${missing.length > 0 ? ', too little while these are missing:' : '.'}`;
    this.told.textContent = `${tabs.length === 1 ? '1 tab' : `${tabs.length} tabs`} filled in ${secondsText(ms)}.${pay}`;
    const say = (words: string) => {
      this.told.textContent = words;
    };
    const spreadsheet = this.spreadsheet;
    const ways = spreadsheet ? tabs.map((tab) => wayTo(tab, spreadsheet, say)) : [];
    const list = element('ul', { class: 'notes' }, ...missing.map((sentence) => element('li', {}, sentence)));
    const link = element('a', { href: pdfLink, target: '_blank', rel: 'noopener' }, "PDF of the homeowner's page");
    this.results.replaceChildren(...(missing.length > 0 ? [list] : []), ...ways, ...(pdfLink === '' ? [] : [link]));
  }
}

/** The nearest place on the page: the field, its section, or the top. */
function placeOf(path: string, paths: ReadonlySet<string>): string {
  if (paths.has(path)) return path;
  const section = path.split('.').slice(0, 2).join('.');
  return paths.has(section) ? section : JOB;
}
