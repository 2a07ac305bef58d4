// Gives a name to what a script says or calls again and again: a text that stands in it thirty times, such as "plank", and
// `Math.max`, which no other step makes shorter. Comes between the steps that join statements, which would undo it, and
// those that shorten names.
import { parse } from 'acorn';

/** What may be called without the object it belongs to. `Array.from` may too, but is three times slower then. */
const FREE =
  /^(?:Math\.\w+|Object\.(?:assign|create|entries|fromEntries|keys|values)|Number\.is\w+|Array\.isArray|JSON\.\w+)$/;
/** Letters of a name as it will be, and what a name must save. */
const NAME_LENGTH = 2;
const LEAST_SAVING = 4;

/** The same program, one that reads and writes as little. @param code a strict script, all of it in one function */
export function namedOnce(code) {
  const program = parse(code, { ecmaVersion: 2022, sourceType: 'script' });
  const named = worthNaming(placesIn(program, code)).map(([text, places], i) => ({ text, places, name: `$${i}$` }));
  if (named.length === 0) return code;
  const body = bodyOf(program);
  const at = body.body.findLast((statement) => statement.directive)?.end ?? body.start + 1;
  const declared = `var ${named.map(({ name, text }) => `${name}=${text}`).join()};`;
  const edits = named.flatMap(({ name, places }) => places.map(({ start, end }) => ({ start, end, put: ` ${name} ` })));
  return edited(code, [{ start: at, end: at, put: declared }, ...edits]);
}

/** Where everything stands that could have a name, by its text. */
function placesIn(program, code) {
  const places = new Map();
  const visit = (node) => {
    const text = code.slice(node.start, node.end);
    if (isText(node) || (node.type === 'MemberExpression' && FREE.test(text))) {
      places.set(text, [...(places.get(text) ?? []), node]);
      return;
    }
    for (const part of partsOf(node)) visit(part);
  };
  visit(program);
  return places;
}

function isText({ type, value }) {
  return type === 'Literal' && typeof value === 'string';
}

/** Those that save bytes, what stands most often first: earlier names become shorter ones. */
function worthNaming(places) {
  const saving = ([text, { length }]) =>
    length * (text.length - NAME_LENGTH) - (text.length + NAME_LENGTH + ',='.length);
  return [...places].filter((one) => saving(one) >= LEAST_SAVING).sort(([, a], [, b]) => b.length - a.length);
}

/** The nodes right below one that are worked out: not names of fields, nor "use strict". */
function partsOf(node) {
  const isKey = (key) => key === 'key' && !node.computed;
  const parts = Object.entries(node).flatMap(([key, value]) => (isKey(key) ? [] : value));
  return node.directive ? [] : parts.filter((part) => typeof part?.type === 'string');
}

/** The body of the function that holds the whole script. */
function bodyOf(program) {
  for (const part of partsOf(program)) {
    const body = part.type === 'BlockStatement' ? part : bodyOf(part);
    if (body) return body;
  }
}

function edited(code, edits) {
  let [text, at] = ['', 0];
  for (const { start, end, put } of edits.toSorted((a, b) => a.start - b.start)) {
    text += code.slice(at, start) + put;
    at = end;
  }
  return text + code.slice(at);
}
