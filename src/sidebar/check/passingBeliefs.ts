/** What passes between the page and the server, and in what time. */
import { asBuilt, type CheckedSheet, LIVE, type PageBelief, REPORTS } from './belief';
import { forecast } from './cellBeliefs';
import { groupOf } from './trial';

const GUIDE = 'guide, communicate with server functions';

/** A value as it comes back from the server. */
async function echo(sheet: CheckedSheet, value: unknown): Promise<unknown> {
  const [told] = await sheet.tryCalls([groupOf(({ given }) => [given.concat(value)])]);
  if ('failed' in told) throw new Error(told.failed);
  return (told.answers[0] as readonly unknown[])[0];
}

function echoBelief(what: string, value: unknown, source: string, ...expected: readonly string[]): PageBelief {
  return {
    ...{ what: `${what} passes`, expected, source },
    find: async (sheet) => JSON.stringify(await echo(sheet, value)),
  };
}

/** @param megabytes of text, a byte a character */
function sizeBelief(megabytes: number, ...expected: readonly string[]): PageBelief {
  return {
    what: `${megabytes} MB of text pass both ways`,
    expected,
    source: LIVE,
    async find(sheet) {
      const text = 'plank by plank, '.repeat((megabytes * 1_000_000) / 16);
      const start = performance.now();
      const isSame = (await echo(sheet, text)) === text;
      return `${isSame ? 'the same' : 'another'}: ${Math.round(performance.now() - start)} ms`;
    },
  };
}

/** The script of a page, and what is said in its tag of how it was built. */
const SCRIPT = /<script id="page-script" data-built="([^"]*)">([\s\S]*?)<\/script>/;

/** A tab that nobody has, and what the server says when it is to be shown. */
const NO_TAB = 'no such tab, for the check';

export const PASSING_BELIEFS: readonly PageBelief[] = [
  echoBelief(
    'a room with blanks',
    { name: 'Den', parts: [null, '', 0, false] },
    GUIDE,
    '{"name":"Den","parts":[null,"",0,false]}',
  ),
  echoBelief(
    'text beyond ASCII',
    '\u00a0\u00bc\u2033\u{1f600}<&"',
    GUIDE,
    JSON.stringify('\u00a0\u00bc\u2033\u{1f600}<&"'),
  ),
  // We send neither: only to know.
  echoBelief('a list of undefined and NaN', [undefined, Number.NaN], LIVE),
  sizeBelief(0.1, 'the same'),
  sizeBelief(1, 'the same'),
  sizeBelief(5),
  sizeBelief(10),
  {
    what: 'the page "Sidebar" was put in as it was built',
    expected: ['the same'],
    source: LIVE,
    async find(sheet) {
      const [told] = await sheet.tryCalls([
        groupOf(({ html }) => [html.createHtmlOutputFromFile('Sidebar').getContent()]),
      ]);
      if ('failed' in told) return told.failed;
      const [, built = '', script = ''] = SCRIPT.exec(String(told.answers[0])) ?? [];
      return asBuilt(script, built);
    },
  },
  {
    what: "what the server says arrives as one sentence, without its kind and its script's lines",
    expected: [`There is no tab "${NO_TAB}" any more. Fill it again.`],
    source: REPORTS,
    find: (sheet) =>
      sheet.showTab(NO_TAB).then(
        () => 'no error',
        (error) => (error as Error).message,
      ),
  },
  {
    // Only to know: kind and stack are cut wherever they are told.
    what: 'the same as it arrives',
    expected: [],
    source: LIVE,
    find: (sheet) => sheet.rawFailure(NO_TAB),
  },
  {
    what: 'two runs at once do not write at the same time',
    expected: ['one after the other'],
    source: 'reference, Lock',
    async find(sheet) {
      const run = groupOf(({ clock, utilities }) => {
        const start = clock.now();
        utilities.sleep(1500);
        return [start, clock.now()];
      });
      const runs = await Promise.all([sheet.tryCalls([run]), sheet.tryCalls([run])]);
      const [first, second] = runs.map(([told]) => ('failed' in told ? [] : (told.answers as readonly number[])));
      if (first.length === 0 || second.length === 0) return 'one was refused';
      return first[1] <= second[0] || second[1] <= first[0] ? 'one after the other' : 'at the same time';
    },
  },
  {
    what: 'the language has what the script uses',
    expected: ['a-b,1,1'],
    source: 'ECMAScript 2018 and 2019',
    find: async (sheet) => String(await sheet.tryInCell('language')),
  },
  {
    what: 'a function run from the menu is fast enough',
    expected: ['in time'],
    source: REPORTS,
    find: async (sheet) => forecast(await sheet.tryInCell('speed')),
  },
];
