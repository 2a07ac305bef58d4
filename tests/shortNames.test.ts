/** Names of fields that the build shortens: which they may be. */
import { describe, expect, test } from 'vitest';
import { projectFolder } from '../src/build.mjs';
import { attributeNames, interfaceOf, knownDeclarations, shortenableNames } from '../src/shortNames.mjs';

const NOTHING = { packages: [], kept: [], declarations: [] };

/** Every field here is `wanted` by name alone. */
const CORE = 'const a = { plankLength: 3 }; export const b = a.plankLength + a.rowCount;';

describe('a name may be shortened', () => {
  test('where only our own code can meet it', () => {
    expect(shortenableNames({ ...NOTHING, code: CORE })).toEqual(['plankLength', 'rowCount']);
  });

  test('where only a comment of what travels says its word', () => {
    const kept = [
      '/** A plankLength. */\nexport interface Block {\n  // of one plankLength\n  readonly rowCount: number; // not a plankLength\n}',
    ];
    expect(shortenableNames({ ...NOTHING, code: CORE, kept })).toEqual(['plankLength']);
  });

  test('where only another part of a source says its word than the interface that travels', () => {
    const source =
      'const plankLength = 1;\nexport interface Row {\n  readonly rowCount: number;\n}\nexport interface Other {\n  readonly plankLength: number;\n}\n';
    expect(shortenableNames({ ...NOTHING, code: CORE, kept: [interfaceOf(source, 'Row')] })).toEqual(['plankLength']);
    expect(() => interfaceOf(source, 'Block')).toThrow('no interface Block');
  });

  test('where only a sentence says its word', () => {
    const code = `${CORE} c("The plankLength is blank."); c("No plankLength of ".concat(a))`;
    expect(shortenableNames({ ...NOTHING, code })).toContain('plankLength');
  });

  test.each([
    ['a text names it', { code: `${CORE} b["plankLength"]` }],
    ['it is part of a path', { code: `${CORE} c("rules.plankLength.0")` }],
    ['a template names it', { code: `${CORE} c(\`\${a}.plankLength\`)` }],
    ['it is asked for', { code: `${CORE} if ("plankLength" in a) a()` }],
    ['an element is marked with it', { code: `${CORE} a.dataset.plankLength = 1` }],
    ['it becomes a text', { code: `${CORE} JSON.stringify({ rows: [{ plankLength: 1 }] })` }],
    ['a package has it', { code: CORE, packages: ['export class A { plankLength() {} }'] }],
    ['a package names it', { code: CORE, packages: ['export default ["plankLength"]'] }],
    ['it passes to the page', { code: CORE, kept: ['export interface Block { readonly plankLength: number }'] }],
    ['the platform declares it', { code: CORE, declarations: ['interface Range { plankLength(): number; }'] }],
  ])('but not where %s', (_, texts) => {
    expect(shortenableNames({ ...NOTHING, ...texts })).not.toContain('plankLength');
  });

  test('but not where an element has an attribute of that name', async () => {
    const attributes = attributeNames(await knownDeclarations(projectFolder, 'browser'));
    for (const name of ['class', 'for', 'role', 'tabindex', 'inputmode', 'colspan', 'maxlength', 'hidden', 'transform'])
      expect(attributes).toContain(name);
  });

  test('but not where the language or the spreadsheet service knows it', async () => {
    const declarations = await knownDeclarations(projectFolder);
    const known = ['flatMap', 'padStart', 'toString', 'find', 'getValues', 'setName', 'addToUi', 'waitLock', 'length'];
    const code = known.map((name) => `a.${name}();`).join('');
    expect(shortenableNames({ ...NOTHING, code, declarations })).toEqual([]);
    // Without the declarations nobody would know them.
    expect(shortenableNames({ ...NOTHING, code })).toEqual(
      expect.arrayContaining(['flatMap', 'getValues', 'waitLock']),
    );
  });
});
