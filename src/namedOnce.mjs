// Gives a name to what a script says or calls again and again: a text that stands in it thirty times, such as "plank", and
// `Math.max`, which no other step makes shorter; where it is asked for, also to `null` and to fields that the language or a
// table names, so that `a.flatMap(b)` becomes `a[c](b)`, and `{label:b}=a` becomes `{[c]:b}=a`. What stands in loops keeps its name:
// looking it up made planning some 5 % slower. Comes between the steps that join statements, which would undo it, and those
// that shorten names.
import { parse } from 'acorn';
import { edited } from './edited.mjs';

/** What may be called without the object it belongs to. `Array.from` may too, but is three times slower then. */
const FREE =
  /^(?:Math\.\w+|Object\.(?:assign|create|entries|fromEntries|keys|values)|Number\.is\w+|Array\.isArray|JSON\.\w+)$/;
/** What the language itself has wherever a script runs; a worker has no `document`. */
const GLOBAL = /^(?:Array|Date|(?:Float64|Int32|Uint8)Array|Map|Number|Object|RangeError|Set|String)$/;
/** Letters of a name as it will be: of what stands as often as this, and of others; and what a name must save. */
const OFTEN = 100;
const nameLength = (places) => (places.length >= OFTEN ? 1 : 2);
const LEAST_SAVING = 1;

/** Loops: a field that has to be looked up by a name is slower there until the engine has compiled them. */
const LOOP = /^(?:For|While|DoWhile)/;
const FUNCTION = /Function/;

/**
 * The same program, one that reads and writes as little.
 *
 * @param code a strict script, all of it in one function
 * @param withFields whether fields outside of loops get names too: for a script that is not loaded anew for every cell
 */
export function namedOnce(code, withFields = false) {
  const program = parse(code, { ecmaVersion: 2022, sourceType: 'script' });
  const found = worthNaming(placesIn(program, code, withFields));
  const named = found.map(([text, places], i) => ({ text, places, name: `$${i}$` }));
  if (named.length === 0) return code;
  const body = bodyOf(program);
  const at = body.body.findLast((statement) => statement.directive)?.end ?? body.start + 1;
  const declared = `var ${named.map(({ name, text }) => `${name}=${text}`).join()};`;
  const edits = named.flatMap(({ name, places }) =>
    places.map(({ start, end, isField }) => ({ start, end, put: isField ? `[${name}]` : ` ${name} ` })),
  );
  return edited(code, [{ start: at, end: at, put: declared }, ...edits]);
}

/** Where everything stands that could have a name, by its text; a field by the text of its name. */
function placesIn(program, code, withFields) {
  const places = new Map();
  const keep = (text, { start, end }, isField) => {
    places.set(text, [...(places.get(text) ?? []), { start, end, isField }]);
  };
  const visit = (node, isRepeated, depth = 0) => {
    const text = code.slice(node.start, node.end);
    const isFree = { MemberExpression: FREE, Identifier: GLOBAL }[node.type]?.test(text);
    if (isText(node) || isFree || (withFields && !isRepeated && isNothing(node))) {
      keep(text, node, false);
      return;
    }
    if (withFields && !isRepeated && isNamedField(node)) {
      keep(JSON.stringify(node.property.name), { start: dotOf(node, code), end: node.end }, true);
    }
    // A table of the script's own level is made once; elsewhere an object with such names takes longer to make.
    const isNaming = node.type === 'ObjectPattern' || (node.type === 'ObjectExpression' && depth === 1);
    if (withFields && !isRepeated && isNaming) {
      for (const { key } of node.properties.filter(isNamedPart)) keep(JSON.stringify(key.name), key, true);
    }
    for (const part of partsOf(node))
      visit(part, isRepeated || LOOP.test(node.type), depth + (FUNCTION.test(node.type) ? 1 : 0));
  };
  visit(program, false);
  return places;
}

function isNamedField({ type, computed, object, property }) {
  return type === 'MemberExpression' && !computed && property.type === 'Identifier' && object.type !== 'Super';
}

/** A field of an object, or one that is taken out of it, under a name of its own. */
function isNamedPart({ type, computed, shorthand, key }) {
  return type === 'Property' && !computed && !shorthand && key.type === 'Identifier';
}

/** `null`, or what a minifier writes for `undefined`. */
function isNothing({ type, raw, operator, argument }) {
  return (type === 'Literal' && raw === 'null') || (operator === 'void' && argument.type === 'Literal');
}

/** Where the dot stands before a name; of `?.`, what comes behind it, since `a?.[b]` keeps both. */
function dotOf({ object, property, optional }, code) {
  return optional ? property.start : code.indexOf('.', object.end);
}

function isText({ type, value }) {
  return type === 'Literal' && typeof value === 'string';
}

/** Those that save bytes, what stands most often first: earlier names become shorter ones. */
function worthNaming(places) {
  // Around a name there are brackets in place of a dot, if there is one; the marks around a text count only where it is declared.
  const savedAt = (length, { isField, start, end }) => end - start - length - (isField ? '[]'.length : 0);
  const saving = ([text, all]) => {
    const length = nameLength(all);
    return all.reduce((sum, place) => sum + savedAt(length, place), 0) - (text.length + length + ',='.length);
  };
  return [...places].filter((one) => saving(one) >= LEAST_SAVING).sort(([, a], [, b]) => b.length - a.length);
}

/** The nodes right below one that are worked out: not names of fields, nor "use strict". */
function partsOf(node) {
  const isName = (key) => !node.computed && (key === 'key' || key === 'property');
  const parts = Object.entries(node).flatMap(([key, value]) => (isName(key) ? [] : value));
  return node.directive || node.shorthand ? [] : parts.filter((part) => typeof part?.type === 'string');
}

/** The body of the function that holds the whole script. */
function bodyOf(program) {
  for (const part of partsOf(program)) {
    const body = part.type === 'BlockStatement' ? part : bodyOf(part);
    if (body) return body;
  }
}
