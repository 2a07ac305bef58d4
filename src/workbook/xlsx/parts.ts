/** The parts of a file that goes out, and what lists them: a part that nothing points at is not read. */
import { parsed, withHead, written } from './xml';

/** Texts by the names of the parts. */
export type Parts = Map<string, string>;

const RELATIONS = 'http://schemas.openxmlformats.org/package/2006/relationships';
const TYPES = 'http://schemas.openxmlformats.org/package/2006/content-types';
const LIST = '[Content_Types].xml';

interface AddedPart {
  readonly path: string;
  readonly xml: string;
  /** Blank where the kind goes by the ending of the name. */
  readonly contentType: string;
  /** What it is to the part that points at it. */
  readonly relation: string;
  /** Its name as seen from there. */
  readonly target: string;
}

/** Adds a part that `from` points at, or the file as a whole where that is blank. @returns the name by which `from` calls it */
export function addPart(parts: Parts, from: string, part: AddedPart): string {
  parts.set(part.path, withHead(part.xml));
  if (part.contentType !== '') {
    addTo(parts, LIST, TYPES, 'Override', { PartName: `/${part.path}`, ContentType: part.contentType });
  }
  const relations = from.replace(/([^/]*)$/, '_rels/$1.rels');
  if (!parts.has(relations)) parts.set(relations, `<Relationships xmlns="${RELATIONS}"/>`);
  const id = `plankLedger${parsed(parts.get(relations) ?? '').documentElement.children.length + 1}`;
  addTo(parts, relations, RELATIONS, 'Relationship', { Id: id, Type: part.relation, Target: part.target });
  return id;
}

/** Says once what parts of this ending are. */
export function addKind(parts: Parts, ending: string, contentType: string): void {
  if (parsed(parts.get(LIST) ?? '').querySelector(`Default[Extension="${ending}"]`)) return;
  addTo(parts, LIST, TYPES, 'Default', { Extension: ending, ContentType: contentType });
}

function addTo(parts: Parts, name: string, space: string, tag: string, attributes: Readonly<Record<string, string>>) {
  const part = parsed(parts.get(name) ?? '');
  const entry = part.createElementNS(space, tag);
  for (const [key, value] of Object.entries(attributes)) entry.setAttribute(key, value);
  part.documentElement.append(entry);
  parts.set(name, written(part));
}
