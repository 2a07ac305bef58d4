/**
 * Small changes of a file, one at a time, as a slip of the hand makes them: `<` for `<=`, plus for minus, `every` for `some`.
 * They are made in the file without its types, where acorn reads it.
 */
import { type AnyNode, type Node, parse } from 'acorn';
import { transformSync } from 'esbuild';

/** A change of the text without types. */
export interface Mutant extends Change {
  /** The line before and after. */
  readonly told: string;
}

interface Change {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  /** The whole expression that can be had in both ways: the call around the name of its function. */
  readonly within: Span;
}

interface Span {
  readonly start: number;
  readonly end: number;
}

/** The same file without its types: what mutants are counted in. */
export function withoutTypes(source: string): string {
  return transformSync(source, { loader: 'ts', target: 'es2022' }).code;
}

/** Every change there is, in the order of the text. */
export function mutantsOf(code: string): readonly Mutant[] {
  const found: Change[] = [];
  const program = parse(code, { ecmaVersion: 2022, sourceType: 'module' }) as AnyNode;
  walk({ node: program, within: program, isLink: false }, code, found);
  return found
    .sort((a, b) => a.from - b.from)
    .map((change) => {
      const start = code.lastIndexOf('\n', change.from - 1) + 1;
      const end = code.indexOf('\n', change.to);
      const before = code.slice(start, end < 0 ? undefined : end).trim();
      const after = (code.slice(start, change.from) + change.text + code.slice(change.to)).split('\n')[0].trim();
      return { ...change, told: `${code.slice(0, start).split('\n').length}: ${before}   =>   ${after}` };
    });
}

/** The text with all of these changes in it, the one in force chosen as it runs: `isMutant(7) ? a <= b : a < b`. */
export function switched(code: string, mutants: readonly (Change & { readonly number: number })[]): string {
  const textOf = (span: Span, isWhole: boolean): string => {
    const own = isWhole ? [] : mutants.filter(({ within }) => within.start === span.start && within.end === span.end);
    const ways = own.map(({ number, from, to, text }) => {
      const changed = code.slice(span.start, from) + text + code.slice(to, span.end);
      return `isMutant(${number}) ? (${changed}) : `;
    });
    const inside = spansOf(mutants, span, isWhole);
    let [at, plain] = [span.start, ''];
    for (const inner of inside) {
      plain += code.slice(at, inner.start) + textOf(inner, false);
      at = inner.end;
    }
    plain += code.slice(at, span.end);
    return isWhole ? plain : `(${ways.join('')}(${plain}))`;
  };
  return textOf({ start: 0, end: code.length }, true);
}

/** The outermost of the expressions with changes that lie within another. */
function spansOf(mutants: readonly Change[], { start, end }: Span, isWhole: boolean): readonly Span[] {
  const inside = mutants
    .map(({ within }) => within)
    .filter((a) => a.start >= start && a.end <= end && (isWhole || a.end - a.start < end - start))
    .sort((a, b) => a.start - b.start || b.end - a.end);
  const outermost: Span[] = [];
  for (const span of inside) if (span.start >= (outermost.at(-1)?.end ?? 0)) outermost.push(span);
  return outermost;
}

const OPERATORS: Readonly<Record<string, readonly string[]>> = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '&&': ['||'],
  '||': ['&&'],
};

const NAMES: Readonly<Record<string, string>> = {
  some: 'every',
  every: 'some',
  min: 'max',
  max: 'min',
  ceil: 'floor',
  floor: 'ceil',
  round: 'floor',
  find: 'findLast',
  indexOf: 'lastIndexOf',
};

/** A part of the program, and the smallest expression around it that stands for a value. */
interface Place {
  readonly node: AnyNode;
  readonly within: Span;
  /** Whether it is a link of a chain with `?.`, which is a value as a whole only. */
  readonly isLink: boolean;
}

function walk(place: Place, code: string, found: Change[]): void {
  const { node, within } = place;
  // `undefined` has become `void 0`, which stays so whatever number stands there.
  if (node.type === 'ImportDeclaration' || (node.type === 'UnaryExpression' && node.operator === 'void')) return;
  for (const change of changesAt(node, code)) found.push({ within, ...change });
  for (const [key, value] of Object.entries(node)) {
    for (const inner of Array.isArray(value) ? value : [value]) {
      if (isNode(inner)) walk(placeOf(inner as AnyNode, key, place), code, found);
    }
  }
}

/** Parts that are no value of their own: what is called by name, what is assigned to, keys. */
const NO_VALUES: Readonly<Record<string, readonly string[]>> = {
  AssignmentExpression: ['left'],
  UpdateExpression: ['argument'],
  TaggedTemplateExpression: ['tag'],
  Property: ['key'],
  ForOfStatement: ['left'],
};

function placeOf(node: AnyNode, key: string, { node: outer, within, isLink }: Place): Place {
  const continues = key === 'callee' || key === 'object';
  if (outer.type === 'ChainExpression' || (isLink && continues)) return { node, within, isLink: true };
  const isName = key === 'callee' && node.type === 'MemberExpression';
  const isValue = /Expression$|^Literal$/.test(node.type) && !isName && !NO_VALUES[outer.type]?.includes(key);
  return { node, within: isValue ? node : within, isLink: false };
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';
}

/** Where `within` is left out, it is the expression around the node. */
function changesAt(node: AnyNode, code: string): readonly (Omit<Change, 'within'> & { readonly within?: Span })[] {
  switch (node.type) {
    case 'BinaryExpression':
    case 'LogicalExpression':
      return operatorChanges(node, code);
    case 'MemberExpression': {
      const { property } = node;
      if (property.type !== 'Identifier' || node.computed || !Object.hasOwn(NAMES, property.name)) return [];
      return [{ from: property.start, to: property.end, text: NAMES[property.name] }];
    }
    case 'UnaryExpression':
      return node.operator === '!' || node.operator === '-' ? [{ from: node.start, to: node.start + 1, text: '' }] : [];
    case 'ConditionalExpression':
      return [{ from: node.start, to: node.end, text: swapped(node, code) }];
    case 'IfStatement':
      return [{ from: node.test.start, to: node.test.end, text: 'false', within: node.test }];
    case 'Literal':
      return literalChanges(node);
    default:
      return [];
  }
}

function operatorChanges(
  { operator, left, right }: Extract<AnyNode, { type: 'BinaryExpression' | 'LogicalExpression' }>,
  code: string,
): readonly Omit<Change, 'within'>[] {
  const from = code.indexOf(operator, left.end);
  if (from < 0 || from > right.start || isText(left) || isText(right)) return [];
  return (OPERATORS[operator] ?? []).map((text) => ({ from, to: from + operator.length, text }));
}

/** Texts are put together with plus signs too. */
function isText(node: { readonly type: string }): boolean {
  return (
    node.type === 'TemplateLiteral' ||
    (node.type === 'Literal' && typeof (node as { value?: unknown }).value === 'string')
  );
}

function swapped(
  { test, consequent, alternate }: Extract<AnyNode, { type: 'ConditionalExpression' }>,
  code: string,
): string {
  const text = ({ start, end }: Node) => code.slice(start, end);
  return `(${text(test)}) ? (${text(alternate)}) : (${text(consequent)})`;
}

function literalChanges({
  value,
  start,
  end,
}: Extract<AnyNode, { type: 'Literal' }>): readonly Omit<Change, 'within'>[] {
  if (typeof value === 'number') return [{ from: start, to: end, text: String(value + 1) }];
  return typeof value === 'boolean' ? [{ from: start, to: end, text: String(!value) }] : [];
}
