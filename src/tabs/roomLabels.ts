/** The labels in the first column of the `Rooms` tab: which field each stands for, and their order. */
import { ENTRY_SECTIONS, type EntryField, type EntrySection, ROOM_LABEL } from '../takeoff/entryFields';
import { tabProblems } from './tabProblems';

/** The field a line of the `Rooms` tab is about. */
export interface LabelPlace {
  readonly section: EntrySection;
  readonly field: EntryField;
  /** Place in the order of the tab: section, number of the item, field. */
  readonly order: readonly [number, number, number];
}

/** Which field a line is about; undefined when it is a line of the person's own. */
export function fieldOfLabel(label: string): LabelPlace | undefined {
  const plain = label.trim().toLowerCase();
  const number = Number(/ (\d+)/.exec(plain)?.[1] ?? 0);
  for (const [s, section] of ENTRY_SECTIONS.entries()) {
    const f = section.fields.findIndex((field) => field.label.replace('#', String(number)).toLowerCase() === plain);
    if (f >= 0 && (!section.isList || number > 0)) {
      return { section, field: section.fields[f], order: [s, section.isList ? number : 0, f] };
    }
  }
  return undefined;
}

/** Labels of several rooms, each once: ours in our order, then the person's own in theirs. */
export function labelsInOrder(labels: readonly string[]): readonly string[] {
  const own: string[] = [];
  const ours: { readonly label: string; readonly order: LabelPlace['order'] }[] = [];
  const seen = new Set<string>();
  for (const label of [ROOM_LABEL, ...labels]) {
    if (seen.has(label)) continue;
    seen.add(label);
    const place = fieldOfLabel(label);
    if (place) ours.push({ label, order: place.order });
    else own.push(label);
  }
  ours.sort(({ order: a }, { order: b }) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]);
  return [...ours.map(({ label }) => label), ...own];
}

/** Whether a cell holds this label, whatever the capitals and spaces around it. */
export function sameLabel(cell: unknown, label: string): boolean {
  return typeof cell === 'string' && cell.trim().toLowerCase() === label.toLowerCase();
}

/** The label of each line; a line that repeats one gets a label of its own, so that nothing is lost. */
export function labelsOf(lines: readonly (readonly unknown[])[]): { labels: readonly string[]; problems: string[] } {
  const problems: string[] = [];
  const seen = new Set<string>();
  const labels = lines.map((line) => {
    let label = plainLabel(String(line[0] ?? ''));
    if (seen.has(label) && label !== '') problems.push(tabProblems.lineTwice(label));
    while (seen.has(label)) label = `${label} (again)`.trim();
    seen.add(label);
    return label;
  });
  return { labels, problems };
}

/** Our own labels as we write them, whatever capitals and spaces they have got since. */
function plainLabel(text: string): string {
  const place = fieldOfLabel(text);
  return place ? place.field.label.replace('#', String(place.order[1])) : text.trim();
}
