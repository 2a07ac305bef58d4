/** An .xlsx file unpacked, with nothing believed of what it says about itself. */
import { strFromU8, Unzip, type UnzipFile, UnzipInflate, unzipSync } from 'fflate';
import { checksum, checksumsIn } from './checksums';
import { MOST_FILE_BYTES, MOST_PARTS, MOST_UNPACKED_BYTES } from './limits';
import { FileProblem } from './problem';

/** The texts of the file by the names of its parts, such as `xl/workbook.xml`. */
export interface Unpacked {
  readonly texts: Readonly<Record<string, string>>;
  /** Names of the parts that are no texts: pictures, macros. */
  readonly others: readonly string[];
}

/** So much at once: whatever comes of it, at most a thousand times as much, is counted before the next. */
const STEP_BYTES = 16 * 1024;

const MB = 1024 * 1024;

/** @throws FileProblem when it is not a whole .xlsx file or larger than the limits */
export function unpack(bytes: Uint8Array): Unpacked {
  checkKind(bytes);
  const parts = new Map<string, Uint8Array[]>();
  const others: string[] = [];
  const count = { bytes: 0, parts: 0 };
  const take = (file: UnzipFile) => {
    checkPart(file.name, ++count.parts, parts);
    if (!/\.(?:xml|rels)$/i.test(file.name)) {
      others.push(file.name);
      return;
    }
    const pieces: Uint8Array[] = [];
    parts.set(file.name, pieces);
    file.ondata = (error, piece) => {
      if (error) throw error;
      count.bytes += piece.length;
      if (count.bytes > MOST_UNPACKED_BYTES) {
        throw new FileProblem(`Unpacked it is larger than ${MOST_UNPACKED_BYTES / MB} MB: no floor needs that.`);
      }
      pieces.push(piece.slice());
    };
    file.start();
  };
  readInSteps(bytes, take);
  checkWhole(bytes, parts);
  const texts = Object.fromEntries([...parts].map(([name, pieces]) => [name, textOf(name, pieces)]));
  if (!texts['[Content_Types].xml'] || !Object.keys(texts).some((name) => /workbook\.xml$/.test(name))) {
    throw new FileProblem('It is packed like an .xlsx file, but there is no workbook in it.');
  }
  return { texts, others };
}

function checkKind(bytes: Uint8Array): void {
  if (bytes.length > MOST_FILE_BYTES) throw new FileProblem(`It is larger than ${MOST_FILE_BYTES / MB} MB.`);
  const begins = (...wanted: readonly number[]) => wanted.every((byte, i) => bytes[i] === byte);
  if (begins(0xd0, 0xcf, 0x11, 0xe0)) {
    throw new FileProblem('It is an older .xls file, or locked with a password. Save it as .xlsx without one.');
  }
  if (!begins(0x50, 0x4b, 0x03, 0x04)) throw new FileProblem('It is not an .xlsx file.');
}

function checkPart(name: string, count: number, parts: ReadonlyMap<string, unknown>): void {
  if (count > MOST_PARTS)
    throw new FileProblem(`It is packed from more than ${MOST_PARTS} parts: no workbook needs that.`);
  if (/(?:^|[/\\])\.\.(?:[/\\]|$)|^[/\\]|^[a-z]:|\\|\0/i.test(name)) {
    throw new FileProblem(`A part of it is named "${name}", to lie outside of the file. No spreadsheet writes that.`);
  }
  if (parts.has(name) || name === '__proto__') throw new FileProblem(`Two parts of it have the same name, "${name}".`);
}

const BROKEN = 'It is broken: it cannot be unpacked. Open it where it was made and save it again.';

/** @throws FileProblem when a part is not what was packed: a letter changed on the way would be a wrong length */
function checkWhole(bytes: Uint8Array, parts: ReadonlyMap<string, readonly Uint8Array[]>): void {
  const wanted = listedChecksums(bytes);
  for (const [name, pieces] of parts) {
    if (pieces.reduce((sum, piece) => checksum(piece, sum), 0) === wanted.get(name)) continue;
    throw new FileProblem(
      `It is damaged: "${name}" in it is not as it was packed. Get the file again from where it lies.`,
    );
  }
}

function listedChecksums(bytes: Uint8Array): ReadonlyMap<string, number> {
  try {
    return checksumsIn(bytes);
  } catch {
    throw new FileProblem(BROKEN);
  }
}

function readInSteps(bytes: Uint8Array, take: (file: UnzipFile) => void): void {
  try {
    // The list at the end is missing where a file was cut off.
    unzipSync(bytes, { filter: () => false });
    const unzip = new Unzip(take);
    unzip.register(UnzipInflate);
    for (let start = 0; start < bytes.length; start += STEP_BYTES) {
      unzip.push(bytes.subarray(start, start + STEP_BYTES), start + STEP_BYTES >= bytes.length);
    }
  } catch (failure) {
    if (failure instanceof FileProblem) throw failure;
    throw new FileProblem(BROKEN);
  }
}

function textOf(name: string, pieces: readonly Uint8Array[]): string {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  const text = strFromU8(whole).replace(/^\uFEFF/, '');
  // What spreadsheets write declares nothing; a text that does may grow without end as it is read.
  if (/<!(?:DOCTYPE|ENTITY)/i.test(text)) {
    throw new FileProblem(`"${name}" in it declares things of its own. No spreadsheet writes that.`);
  }
  return text;
}
