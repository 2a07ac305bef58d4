/** Names of tabs and of ranges, in a file and in the workbook. */

/** What no tab's name may have in a file, and how long it may be. Source: the stated limits of the major spreadsheet. */
const LONGEST = 31;

/**
 * Names for the file, each tab's own where a file takes it.
 *
 * @param names of the tabs, in order
 */
export function fileTabNames(names: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const plain = name
      .replace(/\s*:\s*/g, ' - ')
      .replace(/[\\/?*[\]]/g, ' ')
      .replace(/^'+|'+$/g, '')
      .trim();
    const wanted = plain === '' || plain.toLowerCase() === 'history' ? `Tab ${plain}`.trim() : plain;
    let free = wanted.slice(0, LONGEST).trim();
    for (let copy = 2; taken.has(free.toLowerCase()); copy++) {
      const ending = ` (${copy})`;
      free = wanted.slice(0, LONGEST - ending.length).trim() + ending;
    }
    taken.add(free.toLowerCase());
    return free;
  });
}

const RANGE = /^(?:'(?:[^']|'')+'|[^'!()[\]]+)!\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?$/i;

export interface NamesIn {
  readonly ranges: Readonly<Record<string, string>>;
  readonly notes: readonly string[];
}

/**
 * The named ranges of a file. A name may also stand for a formula, which can hide anything: those are left out.
 *
 * @param workbook the part that lists them
 */
export function namesIn(workbook: Document): NamesIn {
  const ranges: Record<string, string> = {};
  const notes: string[] = [];
  for (const node of workbook.getElementsByTagName('definedName')) {
    const name = node.getAttribute('name') ?? '';
    const text = node.textContent?.trim() ?? '';
    // Print areas and the like: the page is set anew on the way out.
    if (/^_xlnm\./i.test(name) || node.getAttribute('hidden') === '1') continue;
    if (!RANGE.test(text) || !/^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name)) {
      notes.push(`The name "${name}" was left out: it stands for a formula or another file, not for cells here.`);
    } else if (Object.hasOwn(ranges, name)) notes.push(`The name "${name}" is there twice: the first one counts.`);
    else ranges[name] = text;
  }
  return { ranges, notes };
}
