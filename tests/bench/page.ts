/**
 * How the page answers to typing, in a real browser: from the last key until walls and rows are drawn, until the plan is
 * there, and the longest time in which the page could take no key. Median of several keys; the machine should be idle.
 */
import { sharedBrowser } from '../support/browser';
import { openSidebar, type SidebarPage } from '../support/sidebarPage';
import { benchTable } from './benchTable';
import { medianOf } from './sums';

const KEYS = 7;
/** Milliseconds between two keys of somebody who types on. */
const NEXT_KEY = 90;

interface PageCase {
  readonly name: string;
  readonly length: string;
  /** Typed one after the other in place of the width: every one is another floor. */
  readonly widths: readonly string[];
  readonly isSearched?: boolean;
}

const CASES: readonly PageCase[] = [
  { name: 'a usual room', length: `13' 4"`, widths: ['9', '10', '11', '12', '9.5', '10.5', '11.5'] },
  {
    name: 'everything searched',
    length: `13' 4"`,
    widths: ['9', '10', '11', '12', '9.5', '10.5', '11.5'],
    isSearched: true,
  },
  { name: '2,000 planks', length: `100'`, widths: ['50', '49', '51', '48', '52', '49.5', '50.5'] },
];

/** What one key took, milliseconds. */
interface Answer {
  readonly drawn: number;
  readonly planned: number;
  readonly blocked: number;
}

/** Lines of the tables: with threads, and without. */
export async function pageTables(): Promise<string[]> {
  const sidebar = await openSidebar();
  try {
    const rows = [];
    for (const threads of ['given', 'refused'] as const) {
      for (const one of CASES) rows.push(await rowOf(sidebar, one, threads));
    }
    const columns = ['walls and rows, ms', 'plan, ms', 'blocked, ms', 'typing on: plan, ms', 'blocked on, ms'];
    return benchTable([{ heading: 'floor' }, { heading: 'thread' }, ...columns.map((heading) => ({ heading }))], rows);
  } finally {
    await sidebar.close();
    await (await sharedBrowser()).close();
  }
}

async function rowOf(
  sidebar: SidebarPage,
  { name, length, widths, isSearched = false }: PageCase,
  threads: 'given' | 'refused',
): Promise<(string | number)[]> {
  await sidebar.open({}, threads);
  await sidebar.field('shape.length').fill(length);
  await sidebar.field('product.plankLength').fill('48');
  await sidebar.field('product.plankWidth').fill('7 1/2');
  if (isSearched) {
    await sidebar.fold('Laying');
    for (const rule of ['layDirection', 'startSide', 'firstRow']) {
      await sidebar.field(`rules.${rule}`).selectOption('best');
    }
  }
  await sidebar.field('shape.width').fill(widths[0]);
  await sidebar.planned();
  const answers: Answer[] = [];
  for (const width of widths.slice(1, KEYS)) answers.push(await answerTo(sidebar, [width], 0));
  const onward = await answerTo(sidebar, widths, NEXT_KEY);
  const median = (key: keyof Answer) => medianOf(answers.map((answer) => answer[key]));
  const blocked = Math.max(...answers.map((answer) => answer.blocked));
  const thread = threads === 'given' ? 'of its own' : 'the page';
  return [name, thread, median('drawn'), median('planned'), blocked, onward.planned, onward.blocked];
}

/** Types one text after the other into the width, and waits for the plan of the last. */
async function answerTo({ page }: SidebarPage, texts: readonly string[], apart: number): Promise<Answer> {
  // The other aim is planned when a person pauses; that is not what is timed here.
  await page.waitForTimeout(apart === 0 ? 300 : 2500);
  return page.evaluate(
    ({ texts: all, apart: pause }) =>
      new Promise<Answer>((done) => {
        const width = document.getElementById('field-shape.width') as HTMLInputElement;
        const headline = document.getElementById('headline') as HTMLElement;
        const drawing = document.getElementById('drawing') as HTMLElement;
        let [key, drawn, blocked, last] = [0, 0, 0, performance.now()];
        const ticking = setInterval(() => {
          const now = performance.now();
          blocked = Math.max(blocked, now - last - 4);
          last = now;
        }, 0);
        const look = () => {
          if (key === 0) return;
          drawn ||= performance.now() - key;
          if (!/waste/.test(headline.textContent ?? '')) return;
          const planned = performance.now() - key;
          observer.disconnect();
          // What is still to be laid out and painted counts as well.
          setTimeout(() => {
            clearInterval(ticking);
            done({ drawn, planned, blocked });
          }, 60);
        };
        const observer = new MutationObserver(look);
        const type = ([text, ...rest]: readonly string[]) => {
          if (rest.length === 0) {
            observer.observe(headline, { childList: true });
            observer.observe(drawing, { childList: true });
            key = performance.now();
          }
          width.value = text;
          width.dispatchEvent(new Event('input', { bubbles: true }));
          if (rest.length > 0) setTimeout(() => type(rest), pause);
        };
        type(all);
      }),
    { texts, apart },
  );
}
