/** A workbook as it lies on the disk. */
import { randomUUID } from 'node:crypto';
import { ShelfProblem } from './problem';

const FORMAT = 'plank-ledger workbook';
const VERSION = 1;

/** Where the engine's own count of changes begins in a workbook that has none. */
const FIRST_REVISION = 'START_REVISION';

/** What a workbook holds when nothing has been typed yet. */
export type Start = 'blank' | 'demo' | 'half laid';

const STARTS: readonly Start[] = ['blank', 'demo', 'half laid'];

export interface WorkbookFile {
  /** Stays with the workbook under whatever name; its earlier states are found by it. */
  readonly id: string;
  readonly start: Start;
  /** Fingerprint of the .xlsx file that it was made from, or ''. */
  readonly from: string;
  /** What the engine exported, as text; '' as long as there is nothing. */
  readonly data: string;
  /** Changes since, in order: the engine's messages, as texts. */
  readonly changes: readonly string[];
}

export function newWorkbookFile(given: Partial<Omit<WorkbookFile, 'id'>> = {}): WorkbookFile {
  return { start: 'blank', from: '', data: '', changes: [], ...given, id: randomUUID() };
}

export function fileText({ id, start, from, data, changes }: WorkbookFile): string {
  const head = JSON.stringify({ format: FORMAT, version: VERSION, id, start, from }).slice(0, -1);
  return `${head},"data":${data || 'null'},"changes":[${changes.join(',\n')}]}\n`;
}

/**
 * @param text of the file
 * @param name of the workbook, for the sentence
 * @throws ShelfProblem when it is not the whole of a workbook's file
 */
export function readFileText(text: string, name: string): WorkbookFile {
  const parsed = parsedOrNull(text);
  if (parsed?.format !== FORMAT || typeof parsed.id !== 'string' || !Array.isArray(parsed.changes)) {
    throw new ShelfProblem(`The file of "${name}" is not whole. Go back to an earlier state of it.`, 409);
  }
  if (Number(parsed.version) > VERSION) {
    throw new ShelfProblem(`"${name}" was written by a newer Plank Ledger. Open it with that one.`, 409);
  }
  return {
    id: parsed.id,
    start: STARTS.find((start) => start === parsed.start) ?? 'blank',
    from: String(parsed.from ?? ''),
    data: parsed.data ? JSON.stringify(parsed.data) : '',
    changes: parsed.changes.map((change) => JSON.stringify(change)),
  };
}

function parsedOrNull(text: string): Record<string, unknown> | null {
  try {
    return JSON.parse(text) as Record<string, unknown> | null;
  } catch {
    return null;
  }
}

/**
 * The engine's name of the state after the last change.
 *
 * @throws ShelfProblem where `data` or the last change is not the engine's
 */
export function revisionOf({ data, changes }: Pick<WorkbookFile, 'data' | 'changes'>): string {
  const last = changes.at(-1);
  if (last !== undefined) return textIn(parsedOrNull(last), 'nextRevisionId');
  return data === '' ? FIRST_REVISION : textIn(parsedOrNull(data), 'revisionId');
}

function textIn(parsed: Record<string, unknown> | null, field: string): string {
  const value = parsed?.[field];
  if (typeof value === 'string' && value !== '') return value;
  throw new ShelfProblem('The page sent something that is not a workbook.');
}
