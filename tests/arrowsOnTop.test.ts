/** Short functions that the build makes arrow functions: that the script does the same. */
import { runInNewContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import { arrowsOnTop } from '../src/arrowsOnTop.mjs';

const inOne = (body: string) => `(()=>{"use strict";${body}})();`;
const answerOf = (code: string) => runInNewContext(`var answer;${code};answer`);
const LONG = `"${'a'.repeat(800)}"`;

describe('a short function becomes an arrow function', () => {
  test.each([
    ['with a value alone', 'function f(a){return a+1}answer=f(1);', /f=a=>a\+1;/],
    [
      'with several parameters',
      'function f(a,{b},...c){return[a,b,c]}answer=f(1,{b:2},3,4);',
      /f=\(a,\{b\},\.\.\.c\)=>\[/,
    ],
    ['with statements', 'function f(){let a=1;return a}answer=f();', /f=\(\)=>\{let a/],
    ['that answers nothing', 'function f(){return}answer=f();', /f=\(\)=>\{return\}/],
    ['that answers an object', 'function f(){return{a:1}.a}answer=f();', /f=\(\)=>\(\{a:1\}\.a\)/],
    ['that answers the last of several', 'function f(a){return a++,a}answer=f(1);', /f=a=>\(a\+\+,a\)/],
    ['that has to wait', 'async function f(a){return await a}answer=f(1)instanceof Promise;', /f=async a=>/],
    [
      'that is asked for before it stands there',
      'var a=f(g());answer=a;function f(b){return b*2}function g(){return 4}',
      /"use strict";var f=/,
    ],
  ])('%s', (_, body, wanted) => {
    const code = arrowsOnTop(inOne(body));
    expect(code).toMatch(wanted);
    expect(answerOf(code)).toEqual(answerOf(inOne(body)));
  });

  test('and the script is strict as before', () => {
    const body = 'function f(){return 1}answer=(function(){return this})()===void 0&&f();';
    expect(answerOf(arrowsOnTop(inOne(body)))).toBe(1);
  });
});

describe('a function stays', () => {
  test.each([
    ['that gives one value after another', 'function*f(){yield 1}answer=[...f()];'],
    ['that asks what it is called on', 'function f(){return this}answer=f();'],
    ['that asks what it was given', 'function f(){return arguments.length}answer=f(1,2);'],
    ['that asks whether it makes something', 'function f(){return new.target}answer=f();'],
    ['that is long', `function f(){return ${LONG}}answer=f();`],
    ['of another function', 'answer=[1].map(function(a){function f(){return a}return f()});'],
  ])('%s', (_, body) => {
    expect(arrowsOnTop(inOne(body))).toBe(inOne(body));
  });

  test('and a script that is not all in one function is refused', () => {
    expect(() => arrowsOnTop('function f(){return 1}')).toThrow('not all in one function');
  });
});
