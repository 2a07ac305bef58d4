// Leaves out of a bundle the entries of our tables that nothing in it reads: sentences about walls in the script of the
// functions, which know rectangles only, or the help of a field where there is no form. A bundler drops functions and
// values that nobody asks for, but not the entries of a table.
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { parse } from 'acorn';
import { transform } from 'esbuild';

/**
 * Tables of which an entry is asked for by a name that stands in the code, never by one that was typed; and fields of
 * their entries that are for whoever reads the sources, and for the tests.
 */
const TABLES = {
  'src/layout/rules.ts': { names: ['RULES'], forReaders: ['source'] },
  'src/takeoff/reading/problems.ts': {
    names: ['problems', 'lengthSentences', 'areaSentences', 'percentageSentences'],
    forReaders: [],
  },
  'src/takeoff/reading/roomProblems.ts': { names: ['sentences'], forReaders: [] },
};

/** The esbuild plugin. @param bundle the script as it is with all entries, as a module */
export function onlyReadEntries(bundle, projectFolder) {
  const read = namesRead(bundle);
  return {
    name: 'only entries that are read',
    setup(build) {
      build.onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, async ({ path }) => {
        const table = TABLES[relative(projectFolder, path).replaceAll('\\', '/')];
        if (!table) return undefined;
        const { code } = await transform(readFileSync(path, 'utf8'), { loader: 'ts', target: 'es2022' });
        return { contents: withoutUnread(code, table, read) };
      });
    },
  };
}

/**
 * The same tables, with only the entries that are read.
 *
 * @param source a module
 * @param read every name that the rest of the script could ask by
 */
export function withoutUnread(source, { names, forReaders }, read) {
  const { body } = parse(source, { ecmaVersion: 2022, sourceType: 'module' });
  const declared = body.flatMap((statement) => (statement.declaration ?? statement).declarations ?? []);
  const tables = names.map((name) => declared.find(({ id }) => id.name === name)?.init);
  const objects = tables.flatMap((table) => (table?.type === 'ArrayExpression' ? table.elements : [table]));
  if (objects.some((object) => object?.type !== 'ObjectExpression'))
    throw new Error(`${names.join(' or ')} is no longer a table`);
  const isRead = ({ key }) => read.has(key.name ?? key.value) && !forReaders.includes(key.name);
  return without(
    source,
    objects.flatMap(({ properties }) => properties).filter((entry) => !isRead(entry)),
  );
}

/** Names after a dot or taken out of an object, and whole texts, which could be names too. */
function namesRead(code) {
  const read = new Set();
  const visit = (node, parent) => {
    if (node.type === 'MemberExpression' && !node.computed) read.add(node.property.name);
    if (node.type === 'Property' && parent.type === 'ObjectPattern') read.add(node.key.name ?? node.key.value);
    const isKey = parent?.key === node && parent.type === 'Property' && !parent.computed;
    if (node.type === 'Literal' && !isKey) read.add(node.value);
    for (const part of Object.values(node).flat()) if (typeof part?.type === 'string') visit(part, node);
  };
  visit(parse(code, { ecmaVersion: 2022, sourceType: 'module' }), undefined);
  return read;
}

/** The text without these parts of it; a comma behind one goes with it. */
function without(text, parts) {
  let left = '';
  let at = 0;
  for (const { start, end } of parts.toSorted((a, b) => a.start - b.start)) {
    left += text.slice(at, start);
    at = text[end] === ',' ? end + 1 : end;
  }
  return left + text.slice(at);
}
