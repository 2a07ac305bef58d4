// Leaves of the unit library's one big class what turns a unit of length or area into another: its tables of mass, time,
// electricity and so on, and its formatting, are three quarters of its code, and this add-on never asks for them. Works
// on the syntax tree and stops the build when the library is no longer built as it expects.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'acorn';

const KEPT_METHODS = [
  ...['constructor', 'type', 'isUnit', 'clone', 'valueType', '_isDerived', '_normalize', '_denormalize'],
  ...['hasBase', 'equalBase', 'to', 'toNumber', 'toNumeric'],
];
const KEPT_STATICS = ['parse', 'isValuelessUnit', 'typeConverters', '_getNumberConverter', 'isValidAlpha'];
const KEPT_BASES = ['NONE', 'LENGTH', 'SURFACE'];
const DROPPED_FUNCTIONS = [
  ...['getNumericIfUnitless', 'one', 'formatBest', 'handleVAandVARUnits', 'applyBestPrefixIfNeeded'],
  ...['calculateAngleValues', 'assertUnitNameIsValid'],
];

/** Where the class stands: the package's own front door would bring in all of it. */
export const UNIT_CLASS_FILE = fileURLToPath(
  new URL('../node_modules/mathjs/lib/esm/type/unit/Unit.js', import.meta.url),
);

/** The esbuild plugin that goes straight to the class, and leaves it whole: for running in Node. */
export const unitClassOnly = {
  name: 'unit class only',
  setup(build) {
    build.onResolve({ filter: /^mathjs$/ }, ({ importer }) =>
      importer.endsWith('unitLibrary.ts') ? { path: UNIT_CLASS_FILE } : undefined,
    );
  },
};

/** The esbuild plugin for the bundles. */
export const lengthUnitsOnly = {
  name: 'length units only',
  setup(build) {
    build.onLoad({ filter: /mathjs[\\/]lib[\\/]esm[\\/]type[\\/]unit[\\/]Unit\.js$/ }, ({ path }) => ({
      contents: prunedUnits(readFileSync(path, 'utf8')),
    }));
  },
};

/** The source of the unit class with nothing but lengths and areas in it. */
export function prunedUnits(source) {
  const body = factoryBody(parse(source, { ecmaVersion: 2022, sourceType: 'module' }));
  const tables = Object.fromEntries(
    ['PREFIXES', 'BASE_UNITS', 'UNITS', 'ALIASES', 'UNIT_SYSTEMS'].map((name) => [name, tableNamed(body, name)]),
  );
  const units = tables.UNITS.properties.filter((unit) =>
    KEPT_BASES.includes(entryOf(unit.value, 'base').property.name),
  );
  const unitNames = units.map(keyOf);
  const prefixes = new Set(['NONE', ...units.map((unit) => entryOf(unit.value, 'prefixes').property.name)]);
  if (unitNames.length < 20 || prefixes.size < 4) throw new Error('the unit library has another form than expected');
  const cuts = [
    ...body.filter(isDropped(prefixes)),
    ...tables.UNITS.properties.filter((unit) => !units.includes(unit)),
    ...tables.BASE_UNITS.properties.filter((base) => !KEPT_BASES.includes(keyOf(base))),
    ...tables.PREFIXES.properties.filter((prefix) => !prefixes.has(keyOf(prefix))),
    ...tables.ALIASES.properties.filter((alias) => !unitNames.includes(alias.value.value)),
    ...tables.UNIT_SYSTEMS.properties,
  ];
  // The copy helper is what the language itself has; without it no other package comes along.
  return without(source, cuts)
    .replace('var UNIT_SYSTEMS = {', 'var UNIT_SYSTEMS = { auto: {},')
    .replaceAll('_extends(', 'Object.assign(');
}

/** Statements of the class that only what is left out needs. */
function isDropped(prefixes) {
  return (statement) => {
    if (statement.type === 'FunctionDeclaration') return DROPPED_FUNCTIONS.includes(statement.id.name);
    if (statement.type === 'VariableDeclaration') return statement.declarations[0].id.name === 'currentUnitSystem';
    if (statement.type === 'IfStatement') return statement.test.name === 'on';
    if (statement.type !== 'ExpressionStatement') return false;
    const { expression } = statement;
    if (expression.type === 'CallExpression') return DROPPED_FUNCTIONS.includes(expression.callee.name);
    if (expression.type !== 'AssignmentExpression') return false;
    const [root, second, third] = pathOf(expression.left);
    if (root === 'UNIT_SYSTEMS') return true;
    if (root === 'PREFIXES') return !prefixes.has(second);
    if (root !== 'Unit') return false;
    return second === 'prototype' ? !KEPT_METHODS.includes(third) : !KEPT_STATICS.includes(second);
  };
}

/** The statements inside the library's `createUnitClass = factory(name, dependencies, (...) => { ... })`. */
function factoryBody(program) {
  for (const { declaration } of program.body) {
    const made = declaration?.declarations?.[0];
    if (made?.id.name === 'createUnitClass') return made.init.arguments[2].body.body;
  }
  throw new Error('the unit library has no createUnitClass');
}

function tableNamed(body, name) {
  const declared = body.find((s) => s.type === 'VariableDeclaration' && s.declarations[0].id.name === name);
  if (declared?.declarations[0].init.type !== 'ObjectExpression')
    throw new Error(`the unit library has no table ${name}`);
  return declared.declarations[0].init;
}

function pathOf(node) {
  return node.type === 'MemberExpression' ? [...pathOf(node.object), node.property.name] : [node.name];
}

function entryOf(object, key) {
  return object.properties.find((property) => keyOf(property) === key).value;
}

function keyOf({ key }) {
  return key.name ?? key.value;
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
