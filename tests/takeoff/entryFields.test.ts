/** The table of a room's fields: whatever is declared is known everywhere. */
import { expect, test } from 'vitest';
import * as declared from '../../src/takeoff/entryFields';

const sections = Object.entries(declared).filter(
  ([, value]) => typeof value === 'object' && 'fields' in value && 'isList' in value,
);

test.each(sections)('%s is one of the sections of an entry', (_, section) => {
  expect(declared.ENTRY_SECTIONS).toContain(section);
});

test('there are as many sections as an entry has', () => {
  expect(sections).toHaveLength(declared.ENTRY_SECTIONS.length);
});

test('no two fields of a room have one label in the Rooms tab', () => {
  const labels = declared.ENTRY_SECTIONS.flatMap(({ fields }) => fields.map(({ label }) => label.toLowerCase()));
  expect(labels.filter((label, i) => labels.indexOf(label) !== i)).toEqual([]);
});
