// Which names of fields a bundle may shorten. A name is only shortened when nothing but our own core can meet it: whatever
// a text in the bundle could name, the language, the platform or a package knows, or travels or is kept, stays as it is.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parse } from 'acorn';

/** A shorter name is not worth it. */
export const SHORTEST = 3;

/**
 * Names in `code` that may be shortened wherever they stand as the name of a field, in alphabetical order.
 *
 * @param code the bundle before it is made small, as a module
 * @param packages the texts of the packages in it, modules too
 * @param kept texts every word of which stays, but not of their comments: sources that say what travels or is kept, names given away
 * @param declarations texts of the type declarations of what the bundle calls
 */
export function shortenableNames({ code, packages, kept, declarations }) {
  const own = namesIn(code);
  const staying = new Set([
    ...own.said,
    ...packages.flatMap((text) => [...namesIn(text).fields, ...namesIn(text).said]),
    ...kept.flatMap((text) => wordsOf(withoutComments(text))),
    ...declarations.flatMap(declaredMembers),
  ]);
  return [...own.fields].filter((name) => name.length >= SHORTEST && !staying.has(name)).toSorted();
}

/** The pattern for these names and no others. */
export function patternOf(names) {
  return names.length === 0
    ? undefined
    : new RegExp(`^(?:${names.map((name) => name.replaceAll('$', '\\$')).join('|')})$`);
}

/** What is declared of a language as old as the platform's, and of a browser's. */
const LANGUAGE = {
  platform: /^lib\.es(?:5|20(?:1\d|2[01]))\b.*\.d\.ts$/,
  browser: /^lib\.(?:es|dom|webworker|scripthost).*\.d\.ts$/,
};

/**
 * Texts of the declarations of what a script may meet: of the language, and of the platform's services or of a browser.
 *
 * @param where the script runs: `platform` or `browser`
 */
export async function knownDeclarations(projectFolder, where = 'platform') {
  const modules = join(projectFolder, 'node_modules');
  const { default: compilerPath } = await import(pathToFileURL(join(modules, 'typescript/lib/getExePath.js')).href);
  const language = textsOf(dirname(compilerPath()), LANGUAGE[where]);
  const services = textsOf(join(modules, '@types/google-apps-script'), /^google-apps-script\..*\.d\.ts$/);
  if (language.length < 20 || services.length < 20) throw new Error('The type declarations are not where they were');
  // The page meets no service, only the names of what it asks the server for, which its way there has.
  return where === 'platform' ? [...language, ...services] : language;
}

function textsOf(folder, pattern) {
  const files = readdirSync(folder).filter((name) => pattern.test(name));
  return files.map((name) => readFileSync(join(folder, name), 'utf8'));
}

/** The text of an interface of a source. @throws Error when it is not there */
export function interfaceOf(source, name) {
  const [found] = new RegExp(`^(?:export )?interface ${name} \\{[^]*?^\\}`, 'm').exec(source) ?? [];
  if (!found) throw new Error(`There is no interface ${name} any more`);
  return found;
}

/** What an element's attributes may be called: members of the browser's declarations, in small letters. */
export function attributeNames(declarations) {
  return declarations.flatMap(declaredMembers).map((name) => name.toLowerCase());
}

/** Names before a colon, a bracket or the like; words of comments do no harm. */
export function declaredMembers(text) {
  return [...text.matchAll(/(\w+)\??\s*[(:<=,}]/g)].map((match) => match[1]);
}

function withoutComments(text) {
  return text.replace(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm, '');
}

function wordsOf(text) {
  return text.match(/\w+/g) ?? [];
}

/** `fields`: names after a dot, in an object or a class; `said`: the words of texts that code could use as names. */
function namesIn(code) {
  const found = { fields: new Set(), said: new Set() };
  walk(parse(code, { ecmaVersion: 2022, sourceType: 'module' }), found);
  return found;
}

function walk(node, found) {
  const isPlain = !node.computed && node.type !== 'PrivateIdentifier';
  const name = {
    MemberExpression: node.property,
    Property: node.key,
    MethodDefinition: node.key,
    PropertyDefinition: node.key,
  }[node.type];
  if (name?.type === 'Identifier' && isPlain) found.fields.add(name.name);
  const text = node.type === 'Literal' ? node.value : node.type === 'TemplateElement' ? node.value.cooked : undefined;
  // A text with a blank in it is a sentence, and names no field.
  if (typeof text === 'string' && !/\s/.test(text)) for (const word of wordsOf(text)) found.said.add(word);
  // Styles and selectors know what an element is marked with.
  if (node.type === 'MemberExpression' && node.object.property?.name === 'dataset') found.said.add(name?.name);
  // What becomes a text is read again by somebody.
  if (isToText(node)) for (const word of wordsIn(node.arguments)) found.said.add(word);
  for (const child of Object.values(node).flat()) if (typeof child?.type === 'string') walk(child, found);
}

function isToText({ type, callee }) {
  return type === 'CallExpression' && callee.object?.name === 'JSON' && callee.property.name === 'stringify';
}

function wordsIn(nodes) {
  const inner = { fields: new Set(), said: new Set() };
  for (const node of nodes) if (node.type === 'ObjectExpression') walk(node, inner);
  return inner.fields;
}
