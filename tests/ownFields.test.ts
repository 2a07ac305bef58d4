/** Fields that the page shortens although a text or the browser has their word: that they are only ever our own. */
import { describe, expect, test } from 'vitest';
import { pageSources } from '../src/build.mjs';
import { OWN_FIELDS } from '../src/ownFields.mjs';
import { fieldsElsewhere } from './support/fieldsElsewhere';

const elsewhere = fieldsElsewhere(await pageSources());

describe('the compiler', () => {
  test('finds none of these fields anywhere but with our own', () => {
    const told = OWN_FIELDS.flatMap((name) => (elsewhere.has(name) ? [`${name}, in ${elsewhere.get(name)}`] : []));
    expect(told).toEqual([]);
  });

  // Each as the sources have it: `page.host` of the service, an attribute, a field found by its path, what is written down.
  test.each(['length', 'flatMap', 'clientWidth', 'preventDefault', 'host', 'class', 'markingStep', 'count', 'plans'])(
    'finds %s elsewhere too',
    (name) => {
      expect([...elsewhere.keys()]).toContain(name);
    },
  );
});

test('the list is in order, and has nothing twice', () => {
  expect(OWN_FIELDS).toEqual([...new Set(OWN_FIELDS)].toSorted((a, b) => (a.toLowerCase() < b.toLowerCase() ? -1 : 1)));
});
