/** What the build gives a name to because a script says or calls it again and again. */
import { runInNewContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import { namedOnce } from '../src/namedOnce.mjs';

const answerOf = (code: string) => runInNewContext(`"use strict";var answer;${code};answer`);
const inOne = (body: string) => `(()=>{"use strict";${body}})();`;

/** Programs of several uses; what must be in what comes out, and what must not. */
const PROGRAMS: readonly (readonly [string, string, RegExp, RegExp])[] = [
  [
    'a text',
    'answer=["a long text","a long text"].concat("a long text")',
    /\{"use strict";var \$0\$="a long text";/,
    /text".*text"/,
  ],
  [
    'a method that needs no object',
    'answer=[Math.max(1,2),Math.max(3,1),Math.max(2,2),Math.max(0,1)]',
    /\$0\$=Math\.max/,
    /max.*max/,
  ],
  [
    'after a word',
    'answer=[1,2,3].map(a=>{if(a>2)return"a long text";switch(typeof"a long text"){case"string":return"a long text"}})',
    /return \$0\$/,
    /text".*text"/,
  ],
  [
    'a field called by its name',
    'let a={"the first":1};answer=[a["the first"],"the first"in a,"the first"]',
    /\{"the first":1\}/,
    /\$0\$:/,
  ],
  [
    'a field worked out',
    'let a={["the first"]:1};answer=[a["the first"],"the first","the first"]',
    /\[ \$0\$ \]:1/,
    /\["/,
  ],
  [
    'a method that needs its object',
    'answer=[Int32Array.from([1]),Int32Array.from([2]),Int32Array.from([3]),Array.from("ab"),Array.from("cd"),Array.from("ef")].map(a=>[...a])',
    /Int32Array\.from\(\[3/,
    /\$/,
  ],
  ['a text that is short, or stands once', 'answer=["ab","ab","a text that stands once"]', /"ab","ab"/, /\$/],
];

describe('a script with names for what it repeats', () => {
  test.each(PROGRAMS)('%s: does the same', (_, body, wanted, unwanted) => {
    const named = namedOnce(inOne(body));
    expect(answerOf(named)).toEqual(answerOf(inOne(body)));
    expect(named).toMatch(wanted);
    expect(named).not.toMatch(unwanted);
  });

  test('is strict as before', () => {
    const code = inOne('answer=[function(){return this}()===void 0,"a long text","a long text","a long text"]');
    expect(answerOf(namedOnce(code))).toEqual(answerOf(code));
    expect(answerOf(namedOnce(code))[0]).toBe(true);
  });
});
