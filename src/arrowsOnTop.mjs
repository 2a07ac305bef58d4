// Makes the short functions of a bundle's own level arrow functions: `e=a=>b` for `function e(a){return b}`. They are declared
// first of all, so that what is worked out when the script starts can call them as before. An engine reads arrow functions
// in full when it compiles a script, and others when they are called: so long ones stay (all of them would save 1 KB more of the
// page, and took 17 ms to compile instead of 13), and all of a script that is compiled for every cell. The short ones take some
// 3 ms more, once for a page and once for its thread.
import { parse } from 'acorn';

/** Letters of a function that is still short, before names are shortened. */
const SHORT = 600;

/** The same program. @param code a strict script, all of it in one function */
export function arrowsOnTop(code) {
  const body = bodyOf(parse(code, { ecmaVersion: 2022, sourceType: 'script' }));
  const text = ({ start, end }) => code.slice(start, end);
  const directives = body.body.filter(({ directive }) => directive);
  const short = body.body.filter((statement) => isShort(statement));
  if (short.length === 0) return code;
  const rest = body.body.filter((statement) => !statement.directive && !short.includes(statement));
  const declared = `var ${short.map((statement) => `${statement.id.name}=${arrowOf(statement, text)}`).join()};`;
  const inside = [...directives.map(text), declared, ...rest.map(text)].join('');
  return `${code.slice(0, body.start + 1)}${inside}${code.slice(body.end - 1)}`;
}

/** The body of the function that holds the whole script. */
function bodyOf({ body }) {
  const whole = body
    .map(({ expression }) => expression?.callee?.body)
    .find((found) => found?.type === 'BlockStatement');
  if (!whole) throw new Error('The script is not all in one function');
  return whole;
}

function isShort({ type, generator, start, end, params, body }) {
  return type === 'FunctionDeclaration' && !generator && end - start < SHORT && !asksForItself([...params, body]);
}

/** Whether one of these parts has `this`, `arguments` or `new.target`, which are others in an arrow function. */
function asksForItself(parts) {
  return parts.some((part) => {
    if (part.type === 'ThisExpression' || part.type === 'MetaProperty' || part.name === 'arguments') return true;
    return asksForItself(
      Object.values(part)
        .flat()
        .filter((child) => typeof child?.type === 'string'),
    );
  });
}

function arrowOf({ async, params, body }, text) {
  const [first] = params;
  const taken = params.length === 1 && first.type === 'Identifier' ? text(first) : `(${params.map(text).join()})`;
  return `${async ? 'async ' : ''}${taken}=>${answerOf(body, text)}`;
}

/** What is behind the arrow: what a function returns when it does nothing else. */
function answerOf(body, text) {
  const { type, argument } = body.body[0] ?? {};
  if (body.body.length !== 1 || type !== 'ReturnStatement' || !argument) return text(body);
  const answer = text(argument);
  return argument.type === 'SequenceExpression' || answer.startsWith('{') ? `(${answer})` : answer;
}
