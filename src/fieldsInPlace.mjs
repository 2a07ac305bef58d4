// Reads fields of a parameter where they are used, `e=>e.a===f(e.b)` for `({a:e,b:t})=>e===f(t)`, where that is shorter and the
// same: a field is then read once at most, and nothing can have changed it in between.
import { parse } from 'acorn';
import { edited } from './edited.mjs';

/** Letters of a field as it will be read, `.a` or by a name that it gets, `[ab]`; and of a parameter. */
const lettersRead = (field) => Math.min(field.length + '.'.length, '[ab]'.length);
const NAME_LENGTH = 1;

const LOOP = /^(?:For|While|DoWhile)/;
const FUNCTION = /Function/;
/** What may run code that changes something. */
const ACT = /^(?:Call|New|Yield|Await|TaggedTemplate)Expression$/;

/**
 * The same program.
 *
 * @param code a strict script
 * @param isLive whether a field of this name may change without the script setting it by that name
 */
export function fieldsInPlace(code, isLive) {
  const program = parse(code, { ecmaVersion: 2022, sourceType: 'script' });
  const set = namesSet(program);
  const mayChange = (name) => set.has(name) || isLive(name);
  const edits = [];
  const visit = (node) => {
    if (FUNCTION.test(node.type) && node.params.some(({ type }) => type === 'ObjectPattern')) {
      const inside = insideOf(node);
      for (const [i, parameter] of node.params.entries()) {
        const uses = usesToReplace(node, parameter, inside, mayChange);
        if (uses) edits.push(...editsOf(parameter, uses, `$${parameter.start}_${i}`));
      }
    }
    for (const part of partsOf(node)) visit(part);
  };
  visit(program);
  return edited(code, edits);
}

/** Names of fields that the script sets or takes away somewhere. */
function namesSet(program) {
  const found = new Set();
  const visit = (node) => {
    const target = node.type === 'UnaryExpression' && node.operator !== 'delete' ? undefined : targetOf(node);
    if (target?.type === 'MemberExpression' && !target.computed) found.add(target.property.name);
    for (const part of partsOf(node)) visit(part);
  };
  visit(program);
  return found;
}

function targetOf({ type, left, argument }) {
  return { AssignmentExpression: left, ForOfStatement: left, UpdateExpression: argument, UnaryExpression: argument }[
    type
  ];
}

/**
 * What stands in a function: by name, every place where it is read and how often it is bound or written to; and where the
 * first act ends, since before it nothing has changed.
 */
function insideOf(owner) {
  const inside = { reads: new Map(), boundOrSet: new Map(), firstAct: Infinity };
  const visit = (node, place) => {
    if (node.type === 'Identifier') {
      if (place.isTarget) inside.boundOrSet.set(node.name, (inside.boundOrSet.get(node.name) ?? 0) + 1);
      else inside.reads.set(node.name, [...(inside.reads.get(node.name) ?? []), { node, ...place }]);
    }
    if (ACT.test(node.type) || isSetting(node)) inside.firstAct = Math.min(inside.firstAct, node.end);
    const isWithin = node !== owner && FUNCTION.test(node.type);
    const isRepeated = place.isRepeated || isWithin || LOOP.test(node.type);
    for (const [key, part] of namedParts(node)) {
      visit(part, { parent: node, isRepeated, isTarget: isTargetIn(node, key, place.isTarget) });
    }
  };
  visit(owner, { parent: undefined, isRepeated: false, isTarget: false });
  return inside;
}

function isSetting(node) {
  const target = targetOf(node);
  return target?.type === 'MemberExpression' && (node.type !== 'UnaryExpression' || node.operator === 'delete');
}

/** Whether what stands there gets a value: it is bound, or written to. */
function isTargetIn({ type }, key, isTarget) {
  if (type === 'ObjectPattern' || type === 'ArrayPattern' || type === 'RestElement') return isTarget;
  if (type === 'Property') return key === 'value' && isTarget;
  if (type === 'AssignmentPattern') return key === 'left' && isTarget;
  if (FUNCTION.test(type)) return key === 'id' || key === 'params';
  if (type === 'AssignmentExpression' || type === 'ForOfStatement' || type === 'ForInStatement') return key === 'left';
  if (type === 'UpdateExpression') return true;
  return key === 'id' || (type === 'CatchClause' && key === 'param') || (type === 'VariableDeclaration' && isTarget);
}

/** The places to replace, each with its field; nothing when the parameter stays as it is. */
function usesToReplace({ type, params }, parameter, { reads, boundOrSet, firstAct }, mayChange) {
  if (parameter.type !== 'ObjectPattern' || !parameter.properties.every(isPlainField)) return undefined;
  const uses = parameter.properties.flatMap(({ key, value }) => {
    // Bound anew further in, or set, a name would mean something else there.
    if (boundOrSet.get(value.name) !== 1) return [undefined];
    return (reads.get(value.name) ?? []).map((use) => ({ ...use, field: key.name }));
  });
  const isSame = (use) => use && !use.isRepeated && (use.node.start < firstAct || !mayChange(use.field));
  if (!uses.every(isSame)) return undefined;
  const isAlone = type === 'ArrowFunctionExpression' && params.length === 1;
  const asItIs =
    sumOf(parameter.properties, ({ key }) => key.name.length + ':,'.length + NAME_LENGTH) + '{}'.length - 1;
  const inPlace = NAME_LENGTH + sumOf(uses, ({ field }) => lettersRead(field));
  return asItIs + (isAlone ? '()'.length : 0) > inPlace ? uses : undefined;
}

function isPlainField({ type, computed, shorthand, key, value }) {
  return type === 'Property' && !computed && !shorthand && key.type === 'Identifier' && value.type === 'Identifier';
}

function sumOf(list, lettersOf) {
  return list.reduce((sum, one) => sum + lettersOf(one), 0);
}

function editsOf(parameter, uses, name) {
  const put = ({ node, field, parent }) => {
    const read = `${name}.${field}`;
    if (parent.type === 'Property' && parent.shorthand) return `${node.name}:${read}`;
    // Called bare, it gets no object to be called on.
    return (parent.type === 'CallExpression' || parent.type === 'TaggedTemplateExpression') &&
      (parent.callee ?? parent.tag) === node
      ? `(0,${read})`
      : read;
  };
  const replaced = uses.map((use) => ({ start: use.node.start, end: use.node.end, put: put(use) }));
  return [{ start: parameter.start, end: parameter.end, put: name }, ...replaced];
}

/** The nodes right below one, by what they are to it: not names of fields, nor labels. */
function namedParts(node) {
  const isName = (key) => key === 'label' || (!node.computed && (key === 'key' || key === 'property'));
  return Object.entries(node).flatMap(([key, value]) => {
    const parts = [value].flat().filter((part) => typeof part?.type === 'string');
    return isName(key) ? [] : parts.map((part) => [key, part]);
  });
}

function partsOf(node) {
  return namedParts(node).map(([, part]) => part);
}
