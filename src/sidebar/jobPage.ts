/** The page of the whole job: what is typed, its problems, the order and the homeowner's page. */

import type { Units } from '../geometry/length';
import { blankItem, emptyHouse, type HouseEntry } from '../order/houseEntry';
import { HOUSE_SECTIONS } from '../order/houseFields';
import { readHouse } from '../order/readHouse';
import { rememberedPlan } from '../order/rememberedPlan';
import { checkedHouse } from '../tabs/checkedHouse';
import { jobItems } from '../tabs/job';
import {
  changedJob,
  fillHomeowner,
  fillOrder,
  type JobAnswer,
  type OpenedJob,
  openJob,
  saveJob,
} from '../tabs/jobTabs';
import { stakeWords, type TickedList } from '../tabs/laidWork';
import type { RoomEntry } from '../takeoff/entry';
import type { Problem } from '../takeoff/result';
import { plural } from '../takeoff/text/plural';
import { fillProgress } from './filling/fillProgress';
import { besidesWords, wayTo } from './filling/fillView';
import { fieldId } from './form/fieldView';
import { FormProgress } from './form/formProgress';
import { moveButtonId } from './form/itemButtons';
import { shownValue, withJobItemMoved, withJobItems, withJobUnits, withJobValue } from './form/job';
import { JOB, type JobFormEvents, jobSections, roomsWords, stateId } from './form/jobFormView';
import { namesOf, withLinesOf } from './form/jobRooms';
import { stateOf, unneededParts } from './form/jobState';
import { fieldOfMissing } from './form/missingField';
import { goToFirstProblem, pathsOnPage, uncoverProblem } from './form/problemsView';
import { withUsual } from './form/usualLines';
import { secondsText } from './outcome/numbers';
import { busyButton, newTurn } from './parts/busyButton';
import { button, byId, element } from './parts/dom';
import { asked } from './parts/question';
import { NOT_FILLED, takeBackNotFilled, toldLine } from './parts/toldLine';
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

const SAVED_ALREADY =
  'A job is saved in this spreadsheet already. Open it and lose what is typed here, or go on typing: this job will then replace it.';

/** Holds what is typed and what is wrong with it. */
class JobPage implements JobPart {
  private job: HouseEntry;
  private isOpened = false;
  private unneeded = '';
  /** The job as it was last read from its tab or written there. */
  private saved: HouseEntry;
  /** Whether anything was typed or chosen since the page was made. */
  private isChanged = false;
  private rooms: readonly RoomEntry[] = [];
  private problems: readonly Problem[] = [];
  /** Whether the tab of the job could be read again. */
  private isStorable = true;
  private timer = 0;
  private readonly form = byId('job-form');
  private readonly reached = new FormProgress(this.form);
  private readonly told = toldLine();
  private readonly question = element('div', { class: 'question', role: 'alert' });
  private readonly results = element('div', 'ways-to-tabs');
  private readonly turn = newTurn();
  private readonly plan = rememberedPlan();
  private readonly progress = fillProgress((words) => {
    this.told.textContent = words;
  });

  constructor(
    units: Units,
    private readonly spreadsheet: Spreadsheet | null,
  ) {
    this.job = emptyHouse(units);
    this.saved = this.job;
  }

  start(): void {
    const save = (store: Spreadsheet) => saveJob(store, this.job);
    const at = (words: string, doing: string, work: (store: Spreadsheet) => Promise<JobAnswer>, look = {}) =>
      busyButton(words, () => this.fill(doing, work, work === save), look, this.turn);
    this.form.addEventListener('submit', (event) => event.preventDefault());
    byId('job-fill').append(
      at(
        'Fill the order',
        'Planning every room and filling the order',
        (store) => fillOrder(store, this.job, this.mayReplan, this.plan),
        {
          class: 'main',
        },
      ),
      element(
        'div',
        'steps',
        at("Fill the homeowner's page", "Filling the homeowner's page", (store) =>
          fillHomeowner(store, this.job, this.plan),
        ),
        at('Save', 'Saving the job', save),
      ),
      this.progress.element,
      this.told,
      this.question,
      this.results,
    );
    this.rebuild('');
  }

  shown(): void {
    const { spreadsheet } = this;
    if (!spreadsheet) return;
    if (this.isOpened) void this.readRooms(spreadsheet);
    else this.turn.take(() => this.open(spreadsheet));
  }

  private readonly events: JobFormEvents = {
    changed: (fieldPath, value, isChoice) => {
      const path = fieldPath.slice(JOB.length);
      if (path === 'units') this.change(withJobUnits(this.job, value === 'us' ? 'us' : 'metric'));
      else this.change(withJobValue(this.job, path, value));
      if (isChoice && path === 'units') this.rebuild(fieldId(fieldPath));
    },
    left: (fieldPath) => {
      this.reached.left(fieldPath);
      this.look();
      uncoverProblem(fieldPath);
    },
    ownChosen: () => {},
    added: (at) => {
      const items = this.itemsAt(at);
      this.changeItems(at, withJobItems(this.job, at, [...items, blankItem(at as 'trims')]));
      this.rebuild('');
      this.form.querySelector<HTMLElement>(`[data-path^="${JOB}${at}.${items.length}."] input`)?.focus();
    },
    removed: (at, index) => {
      const rest = this.itemsAt(at).filter((_, i) => i !== index);
      this.changeItems(at, withJobItems(this.job, at, rest));
      this.rebuild(`add-${JOB}${at}`);
    },
    moved: (at, index, by) => {
      this.changeItems(at, withJobItemMoved(this.job, at, index, by));
      this.rebuild(moveButtonId(`${JOB}${at}`, index + by, by));
    },
    usualWanted: (at) => {
      this.change(withUsual(this.job, at));
      this.rebuild('');
      this.form.querySelector<HTMLElement>(`[data-path^="${JOB}${at}."] input`)?.focus();
    },
    opened: (at, isOpen) => this.reached.opened(at, isOpen),
  };

  private itemsAt(at: string): readonly object[] {
    return HOUSE_SECTIONS.filter((section) => section.at === at).flatMap((section) => jobItems(this.job, section));
  }

  private changeItems(at: string, job: HouseEntry): void {
    this.reached.renumbered(`${JOB}${at}`);
    this.change(job);
  }

  private change(job: HouseEntry): void {
    this.job = job;
    this.isChanged = true;
    this.reached.typed();
    this.tellStates();
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.look(), PAUSE);
  }

  private tellStates(): void {
    for (const section of HOUSE_SECTIONS) {
      const words = document.getElementById(stateId(section.at));
      if (words) words.textContent = stateOf(section, this.job, this.rooms);
    }
    if (this.unneeded !== this.unneededNow()) this.rebuild(document.activeElement?.id ?? '');
  }

  /** The parts that stand in the fold of those not needed, or could. */
  private unneededNow(): string {
    return unneededParts(this.job, this.rooms)
      .map(({ at }) => at)
      .join();
  }

  private rebuild(focusId: string): void {
    const { job, rooms } = this;
    if (rooms.length > 0) {
      byId('room-names').replaceChildren(...namesOf(rooms).map((value) => element('option', { value })));
    }
    this.unneeded = this.unneededNow();
    this.form.replaceChildren(...jobSections({ job, rooms, isOpen: (at) => this.reached.isOpen(at) }, this.events));
    this.tell();
    document.getElementById(focusId)?.focus();
  }

  private look(): void {
    const checked = checkedHouse(this.job);
    const read = checked.ok ? readHouse(checked.entry) : { status: 'problems' as const, problems: checked.problems };
    this.problems = read.status === 'problems' ? read.problems : [];
    this.isStorable = checked.ok;
    this.tell();
    if (this.problems.length === 0) takeBackNotFilled(this.told);
  }

  private tell(): void {
    const paths = pathsOnPage(this.form);
    const isBlank = (path: string) =>
      document.getElementById(fieldId(path)) !== null && this.valueAt(path.slice(JOB.length)) === '';
    const placed = this.problems.map(({ field, text }) => ({ field: placeOf(`${JOB}${field}`, paths), text }));
    this.reached.tell(placed, isBlank);
  }

  private valueAt(path: string): string {
    const part = (whole: unknown, key: string) => (whole as Record<string, unknown> | undefined)?.[key];
    return String(shownValue(path.split('.').reduce<unknown>(part, this.job))).trim();
  }

  /** Until the saved job is known nothing may be filled or saved: it could be written over with less. */
  private async open(store: Spreadsheet): Promise<void> {
    while (!this.isOpened) {
      this.told.textContent = 'Opening the job ...';
      try {
        const opened = await openJob(store, this.job.units);
        this.told.textContent = '';
        await this.take(opened);
        this.isOpened = true;
      } catch (error) {
        this.told.textContent = '';
        await asked(this.question, (error as Error).message, ['Try again']);
      }
    }
  }

  /** What was typed in the meantime is not written over without asking. */
  private async take({ entry, rooms, problems }: OpenedJob): Promise<void> {
    this.rooms = rooms;
    const isSaved = JSON.stringify(entry) !== JSON.stringify(emptyHouse(entry.units));
    const keepsTyped =
      this.isChanged && (!isSaved || (await asked(this.question, SAVED_ALREADY, ['Open it', 'Keep typing'])) === 1);
    this.job = withLinesOf(keepsTyped ? this.job : entry, rooms);
    this.saved = entry;
    this.problems = problems;
    this.reached.begin(this.isChanged);
    if (problems.length > 0) this.reached.press();
    this.rebuild(document.activeElement?.id ?? '');
  }

  private async readRooms(store: Spreadsheet): Promise<void> {
    try {
      this.takeRooms((await openJob(store, this.job.units)).rooms);
    } catch (error) {
      this.told.textContent = (error as Error).message;
    }
  }

  /** What is saved by now is there to be chosen; a form in which nothing is new stays as it stands. */
  private takeRooms(rooms: readonly RoomEntry[]): void {
    const isSame = JSON.stringify(rooms) === JSON.stringify(this.rooms);
    this.rooms = rooms;
    this.job = withLinesOf(this.job, rooms);
    if (!isSame) this.rebuild(document.activeElement?.id ?? '');
    byId('job-rooms').textContent = roomsWords(namesOf(rooms));
  }

  private async fill(
    doing: string,
    work: (store: Spreadsheet) => Promise<JobAnswer>,
    mayBeHalf = false,
  ): Promise<void> {
    this.results.replaceChildren();
    this.reached.press();
    this.look();
    // A job can be put aside half typed, as long as it can be opened again; it cannot be ordered so.
    if (this.problems.length > 0 && !(mayBeHalf && this.isStorable)) {
      this.told.textContent = NOT_FILLED;
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
      if (!(await this.mayWriteOver(this.spreadsheet))) return;
      const { job } = this;
      const answer = await this.progress.during(this.spreadsheet, 0, work);
      if (answer.status === 'filled') this.saved = job;
      this.answered(answer, performance.now() - start);
    } catch (error) {
      this.told.textContent = `${(error as Error).message} Nothing you typed is lost: press the button to try again.`;
    }
  }

  /** What somebody has typed in the tab of the job meanwhile is not written over without asking. */
  private async mayWriteOver(store: Spreadsheet): Promise<boolean> {
    const lines = await changedJob(store, this.job, this.saved);
    if (lines.length === 0) return true;
    const said = `The job was changed in its tab since it was opened here: ${lines.join('; ')}.`;
    const chosen = await asked(this.question, said, ['Open it as it is there', 'Write over it', 'Neither']);
    if (chosen === 1) return true;
    this.told.textContent = 'Nothing was filled.';
    if (chosen === 0) {
      this.isChanged = false;
      await this.take(await openJob(store, this.job.units));
    }
    return false;
  }

  /** Work that is done is not planned again unless the person says so. */
  private readonly mayReplan = async (lists: readonly TickedList[]): Promise<boolean> =>
    (await asked(this.question, stakeWords(lists), ['Leave them as they are', 'Fill all the same'])) === 1;

  private answered(answer: JobAnswer, ms: number): void {
    if (answer.status === 'problems') {
      this.problems = answer.problems;
      this.tell();
      this.told.textContent = NOT_FILLED;
      goToFirstProblem(this.form);
      return;
    }
    const { tabs, toPay, missing, notes, pdf, kept, replaced, left } = answer;
    const pay =
      toPay === ''
        ? ''
        : ` The homeowner pays ${toPay}${missing.length > 0 ? '. That is too low until these are filled in:' : '.'}`;
    this.told.textContent = `${plural(tabs.length, 'tab')} filled in ${secondsText(ms)}.${pay}`;
    const besides = [...left, ...besidesWords(replaced, kept)];
    const say = (words: string) => {
      this.told.textContent = words;
    };
    const spreadsheet = this.spreadsheet;
    const ways = spreadsheet ? tabs.map((tab) => wayTo(tab, spreadsheet, say)) : [];
    this.results.replaceChildren(
      ...this.missingList(missing),
      ...[besides, notes].flatMap(sentences),
      ...ways,
      ...(pdf ? [element('a', { href: pdf.link, target: '_blank', rel: 'noopener' }, `PDF of ${pdf.tab}`)] : []),
    );
  }

  /** What is missing, each with the way to its field. */
  private missingList(missing: readonly string[]): readonly HTMLElement[] {
    if (missing.length === 0) return [];
    const items = missing.map((sentence) => {
      const path = fieldOfMissing(sentence, this.job);
      const words = path === '' ? sentence : button(sentence, () => this.goTo(path), 'way');
      return element('li', {}, words);
    });
    return [element('ul', 'notes', ...items)];
  }

  private goTo(path: string): void {
    const at = path.split('.')[0];
    const box = document.getElementById(fieldId(`${JOB}${path}`));
    const shut = box?.closest('details') ?? document.getElementById(stateId(at))?.closest('details');
    for (let fold = shut; fold; fold = fold.parentElement?.closest('details')) fold.open = true;
    const target = box ?? shut?.querySelector<HTMLElement>('summary');
    target?.focus();
    target?.scrollIntoView({ block: 'center' });
  }
}

/** The nearest place on the page: the field, its section, or the top. */
function placeOf(path: string, paths: ReadonlySet<string>): string {
  if (paths.has(path)) return path;
  const section = path.split('.').slice(0, 2).join('.');
  return paths.has(section) ? section : JOB;
}

/** A list of sentences; none where there is nothing to say. */
function sentences(texts: readonly string[]): readonly HTMLElement[] {
  if (texts.length === 0) return [];
  return [element('ul', 'notes', ...texts.map((text) => element('li', {}, text)))];
}
