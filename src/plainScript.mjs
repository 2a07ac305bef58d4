// Makes a minified script one that survives being pasted, edited and served: characters of ASCII only, short lines, and
// nothing in a string or a pattern that looks like a comment or a template.
import { parse } from 'acorn';

/** Under 200 letters: far under what editors and mail cut off. */
export const LONGEST_LINE = 199;
/** Where a long text goes on in the next line, and how long a text stays in one piece. */
const WRAP_AT = 160;
const SHORT_TEXT = 40;
/** Help of a custom function: whether the platform reads on in a second line is not documented. */
const HELP_LINE = /^ \* @/;

/** The same program. @param code minified, without comments */
export function plainScript(code) {
  return wrapped(withPlusSigns(code));
}

/**
 * Writes `"a".concat(b,"c")`, which is what becomes of a template when templates are not to be used, as `"a"+b+"c"`, and a
 * template with nothing to fill in as a text. A part is put in brackets unless it binds more closely than `+` does; so is the whole, unless it stands where anything may.
 */
export function withPlusSigns(code) {
  const edits = [];
  const visit = (node, parent, key, isContinued) => {
    if (isBareTemplate(node)) {
      edits.push([node.start, node.end, JSON.stringify(node.quasis[0].value.cooked)]);
      return;
    }
    if (isConcat(node)) {
      const { object } = node.callee;
      const [open, close] = isContinued || mayStandBare(node, parent, key) ? ['', ''] : ['(', ')'];
      edits.push([node.start, node.start, open]);
      // Where a text comes second, the sum is a text without an empty one before it; `return` still ends before what follows.
      const from = object.value === '' && isText(node.arguments[1]) ? object.start : object.end;
      edits.push([from, node.arguments[0].start, from === object.end ? '+' : ' ']);
      for (const [i, part] of node.arguments.entries()) {
        const [before, after] = CLOSER.has(part.type) && !isConcat(part) ? ['', ''] : ['(', ')'];
        const next = node.arguments[i + 1];
        edits.push(
          [part.start, part.start, before],
          [part.end, next ? next.start : node.end, next ? `${after}+` : after + close],
        );
      }
    }
    for (const [name, child] of Object.entries(node)) {
      for (const one of Array.isArray(child) ? child : [child])
        if (typeof one?.type === 'string')
          visit(one, node, name, node.type === 'MemberExpression' && key === 'callee' && isConcat(parent));
    }
  };
  visit(parse(code, { ecmaVersion: 2022, sourceType: 'script' }), null, '', false);
  return edited(code, edits);
}

/** Of a text, or of what another such call has put together. */
function isConcat({ type, callee, arguments: parts }) {
  if (type !== 'CallExpression' || callee.type !== 'MemberExpression' || callee.property.name !== 'concat')
    return false;
  const { object } = callee;
  if (typeof object.value !== 'string' && !isBareTemplate(object) && !isConcat(object)) return false;
  return parts.length > 0 && parts.every((part) => part.type !== 'SpreadElement');
}

function isText(node) {
  return typeof node?.value === 'string' || (node !== undefined && isBareTemplate(node));
}

function isBareTemplate({ type, quasis }) {
  return type === 'TemplateLiteral' && quasis.length === 1;
}

/** What needs no brackets as a part of a sum. */
const CLOSER = new Set([
  'Identifier',
  'Literal',
  'TemplateLiteral',
  'MemberExpression',
  'CallExpression',
  'ThisExpression',
]);

function mayStandBare(node, parent, key) {
  if (parent === null) return false;
  const { type } = parent;
  if (type === 'CallExpression' || type === 'NewExpression') return key === 'arguments' && !isConcat(parent);
  if (type === 'ConditionalExpression') return key !== 'test';
  if (type === 'Property') return key === 'value';
  return BARE.has(type) && node !== parent.left;
}

const BARE = new Set([
  'ReturnStatement',
  'ArrowFunctionExpression',
  'VariableDeclarator',
  'AssignmentExpression',
  'ArrayExpression',
]);

/** Edits in any order, none overlapping; those at one place in the order they were made. */
function edited(code, edits) {
  let text = '';
  let at = 0;
  const inOrder = edits.map((edit, i) => [...edit, i]).sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[3] - b[3]);
  for (const [start, end, put] of inOrder) {
    text += code.slice(at, start) + put;
    at = end;
  }
  return text + code.slice(at);
}

function wrapped(code) {
  const tokens = [];
  parse(code, { ecmaVersion: 2022, sourceType: 'script', onToken: tokens });
  const out = { text: '', lineLength: 0 };
  // What stands between two places where a line may end.
  const part = { text: '', mayStart: false };
  const flush = () => {
    if (part.mayStart && out.lineLength + part.text.length > LONGEST_LINE) append(out, '\n');
    append(out, part.text);
    Object.assign(part, { text: '', mayStart: false });
  };
  let end = 0;
  let canBreak = false;
  for (const token of tokens) {
    part.text += code.slice(end, token.start);
    const text = plainToken(token, code.slice(token.start, token.end));
    // A line that starts with `function` is for the script's own functions: so they are found in the file.
    if (canBreak && token.type.keyword !== 'function') {
      flush();
      part.mayStart = true;
    }
    const isText = token.type.label === 'string' || token.type.label === 'template';
    if (isText && text.length > SHORT_TEXT) {
      if (part.mayStart && out.lineLength + part.text.length + SHORT_TEXT > LONGEST_LINE) append(out, '\n');
      part.mayStart = false;
      flush();
      append(out, wrappedText(text, out.lineLength));
    } else part.text += text;
    // A line may end after a sign that calls for something more; after a word, such as `return`, it would end the statement.
    canBreak = !token.type.keyword && (token.type.beforeExpr || token.type.label === ';');
    end = token.end;
  }
  flush();
  append(out, code.slice(end));
  return out.text;
}

function append(out, text) {
  out.text += text;
  const last = text.lastIndexOf('\n');
  out.lineLength = last < 0 ? out.lineLength + text.length : text.length - last - 1;
}

function plainToken({ type }, text) {
  if (type.label === 'template') return escaped(text);
  if (type.label === 'string')
    return escaped(text).replaceAll('//', '/\\/').replaceAll('/*', '/\\*').replaceAll('`', '\\x60');
  if (type.label !== 'regexp') return text;
  const [, body, flags] = /^\/(.*)\/(\w*)$/s.exec(text);
  const plain = escaped(body).replace(/\\[\s\S]|[/`]/g, (part) => {
    if (part === '/' || part === '\\/') return '\\x2f';
    return part === '`' || part === '\\`' ? '\\x60' : part;
  });
  return `/${plain}/${flags}`;
}

/** Every code unit that is not ASCII as `\uXXXX`. */
function escaped(text) {
  return text.replace(/[\u0080-\uffff]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/** A long text goes on in the next line after a backslash, which is no part of it. */
function wrappedText(text, lineLength) {
  let wrapped = '';
  let length = lineLength;
  for (const [part] of text.matchAll(/\\u\{[^}]*\}|\\u.{4}|\\x..|\\[\s\S]|[\s\S]/g)) {
    if (length + part.length > WRAP_AT) {
      wrapped += '\\\n';
      length = 0;
    }
    wrapped += part;
    length = part.endsWith('\n') ? 0 : length + part.length;
  }
  return wrapped;
}

/** What would be lost or choked on in a file, as sentences; none when all is well. */
export function troublesIn(name, text) {
  const troubles = [];
  for (const [index, line] of text.split('\n').entries()) {
    if (line.length > LONGEST_LINE && !HELP_LINE.test(line))
      troubles.push(`${name}, line ${index + 1} has ${line.length} characters`);
    const strange = /[\u0080-\uffff]/.exec(line);
    if (strange) troubles.push(`${name}, line ${index + 1} has a "${strange[0]}", which is not ASCII`);
  }
  return troubles;
}

/** What a service that strips comments from a script could take for one, as sentences. @param code a whole script */
export function commentsLookedLike(name, code) {
  const tokens = [];
  parse(code, { ecmaVersion: 2022, sourceType: 'script', onToken: tokens });
  const texts = tokens.map(({ start, end, type }) => ({ text: code.slice(start, end), type: type.label }));
  const isText = ({ type }) => type === 'string' || type === 'regexp' || type === 'template' || type === '`';
  const found = texts.filter((token) => isText(token) && /`|\/\*|[^\\]\/\/|^\/\/./s.test(token.text));
  return found.map(({ text }) => `${name} has ${text.slice(0, 60)} in its script`);
}
