/** Notes at cells as the comments of a file, and back. Source of the form: ECMA-376 part 1, 18.7, and part 4, 19 (VML). */
import { columnLetters, placeIn } from './addresses';
import { escaped } from './formulas';
import { addKind, addPart, type Parts } from './parts';
import { parsed } from './xml';

interface Note {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** Adds the notes of a tab, and the drawing that some programs want of each. @returns the drawing's name in the tab's part */
export function addComments(parts: Parts, sheetPart: string, notes: readonly Note[]): string {
  const number = /(\d+)\.xml$/.exec(sheetPart)?.[1] ?? '0';
  addKind(parts, 'vml', 'application/vnd.openxmlformats-officedocument.vmlDrawing');
  addPart(parts, sheetPart, {
    path: `xl/comments${number}.xml`,
    xml: commentsXml(notes),
    contentType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml',
    relation: `${OFFICE}/comments`,
    target: `../comments${number}.xml`,
  });
  return addPart(parts, sheetPart, {
    path: `xl/drawings/vmlDrawing${number}.vml`,
    xml: drawingXml(notes),
    contentType: '',
    relation: `${OFFICE}/vmlDrawing`,
    target: `../drawings/vmlDrawing${number}.vml`,
  });
}

function commentsXml(notes: readonly Note[]): string {
  const listed = notes.map(({ row, column, text }) => {
    const at = `${columnLetters(column)}${row + 1}`;
    return `<comment ref="${at}" authorId="0"><text><r><t xml:space="preserve">${escaped(text)}</t></r></text></comment>`;
  });
  const space = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  return `<comments xmlns="${space}"><authors><author/></authors><commentList>${listed.join('')}</commentList></comments>`;
}

/** A closed yellow slip for each note, beside its cell. */
function drawingXml(notes: readonly Note[]): string {
  const slips = notes.map(
    ({ row, column }, i) =>
      `<v:shape id="_x0000_s${1025 + i}" type="#_x0000_t202" style="position:absolute;width:144pt;height:72pt;visibility:hidden" fillcolor="#ffffe1" o:insetmode="auto"><v:textbox/><x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${column + 1}, 15, ${row}, 2, ${column + 3}, 15, ${row + 5}, 2</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`,
  );
  return `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>${slips.join('')}</xml>`;
}

/** The comments that stand at the cells of a tab, as notes; a conversation in the place of what older programs show of it. */
export function commentsIn(texts: Readonly<Record<string, string>>, sheetPart: string): readonly Note[] {
  const found = new Map<string, Note>();
  const put = (note: Note) => found.set(`${note.row},${note.column}`, note);
  for (const part of partsPointedAt(texts, sheetPart, /\/comments$/))
    elementsOf(part, 'comment').flatMap(noteOf).forEach(put);
  const names = namesOfPeople(texts);
  for (const part of partsPointedAt(texts, sheetPart, /\/threadedComments?$/i)) conversations(part, names).forEach(put);
  return [...found.values()];
}

function partsPointedAt(texts: Readonly<Record<string, string>>, sheetPart: string, type: RegExp): readonly Document[] {
  const relations = texts[sheetPart.replace(/([^/]+)$/, '_rels/$1.rels')];
  if (relations === undefined) return [];
  const folder = sheetPart.replace(/[^/]*$/, '');
  return elementsOf(parsed(relations), 'Relationship').flatMap((link) => {
    const part = texts[resolved(folder, link.getAttribute('Target') ?? '')];
    return type.test(link.getAttribute('Type') ?? '') && part !== undefined ? [parsed(part)] : [];
  });
}

const elementsOf = (part: Document | Element, name: string): Element[] => [...part.getElementsByTagNameNS('*', name)];

function noteOf(comment: Element): Note[] {
  const place = placeIn(comment.getAttribute('ref') ?? '');
  // Letters of a reading aid (`rPh`) are not part of the text.
  const letters = elementsOf(comment, 't').filter((t) => t.parentElement?.localName !== 'rPh');
  const text = letters.map((t) => t.textContent ?? '').join('');
  return place.row < 0 || text.trim() === '' ? [] : [{ ...place, text }];
}

/** Who takes part in conversations, by the numbers they have there. */
function namesOfPeople(texts: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  const parts = Object.entries(texts).filter(([name]) => /(?:^|\/)persons\/[^/]+\.xml$/.test(name));
  const people = parts.flatMap(([, xml]) => elementsOf(parsed(xml), 'person'));
  return new Map(people.map((one) => [one.getAttribute('id') ?? '', one.getAttribute('displayName') ?? '']));
}

/** Each conversation as one note: who wrote what, a line each, in their order. Source of the form: [MS-XLSX], threaded comments and persons. */
function conversations(part: Document, names: ReadonlyMap<string, string>): readonly Note[] {
  const lines = new Map<string, string[]>();
  for (const comment of elementsOf(part, 'threadedComment')) {
    const ref = comment.getAttribute('ref') ?? '';
    const words = elementsOf(comment, 'text')[0]?.textContent?.trim() ?? '';
    const name = names.get(comment.getAttribute('personId') ?? '') ?? '';
    if (words !== '') lines.set(ref, [...(lines.get(ref) ?? []), name === '' ? words : `${name}: ${words}`]);
  }
  return [...lines].flatMap(([ref, said]) => {
    const place = placeIn(ref);
    return place.row < 0 ? [] : [{ ...place, text: said.join('\n') }];
  });
}

/** A part's name from where it is pointed at. */
function resolved(folder: string, target: string): string {
  if (target.startsWith('/')) return target.slice(1);
  const steps: string[] = [];
  for (const step of `${folder}${target}`.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.') steps.push(step);
  }
  return steps.join('/');
}
