/** Which problems of an entry are told where: at once where something is typed, later where nothing is yet. */
import { RULES } from '../../layout/rules';
import type { Problem } from '../../takeoff/result';

/** Sections of the form, each with a place for problems that are at none of its fields. */
export type SectionPath = '' | 'shape' | 'bows' | 'cutouts' | 'doorways' | 'product' | 'laying' | 'rules';

/** What is on the page and how far a person has got. */
export interface ShownFields {
  /** Paths of the fields that are on the page. */
  readonly paths: ReadonlySet<string>;
  /** Fields that were left. */
  readonly leftPaths: ReadonlySet<string>;
  /** Whether the tabs were to be filled: then everything is told. */
  readonly isPressed: boolean;
  isBlank(path: string): boolean;
}

/** Sentences by the field or section they are told at. */
export type ShownProblems = ReadonlyMap<string, readonly string[]>;

/** Where each problem is told. A field nobody has come to yet is not told that it is blank. */
export function shownProblems(problems: readonly Problem[], fields: ShownFields): ShownProblems {
  const shown = new Map<string, string[]>();
  for (const { field, text } of problems) {
    const place = fields.paths.has(field) ? field : sectionOf(field);
    const isField = place === field && place !== sectionOf(field);
    const isToCome = isField && fields.isBlank(field) && !fields.leftPaths.has(field) && !fields.isPressed;
    if (!isToCome) shown.set(place, [...(shown.get(place) ?? []), text]);
  }
  return shown;
}

const LAYING_KEYS: readonly string[] = RULES.flatMap((rule) => ('isLaying' in rule ? [rule.key] : []));

/** The section of the form that a field stands in; the first one for what is at no field. */
export function sectionOf(path: string): SectionPath {
  const [first, second = ''] = path.split('.');
  if (first === 'rules') return LAYING_KEYS.includes(second) ? 'laying' : 'rules';
  if (first === 'shape' || first === 'bows' || first === 'cutouts' || first === 'doorways' || first === 'product')
    return first;
  return '';
}
