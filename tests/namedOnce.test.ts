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
    /\$0\$ \.from\(\[3/,
    /=Int32Array\.from/,
  ],
  [
    'what the language has, but not a field or a parameter of its name',
    'let a={String:4};answer=[String(1),String(2),String(3),a.String,String(a.String)]',
    /a\.String, \$0\$ \(a/,
    /\{ /,
  ],
  ['a text that is short, or stands once', 'answer=["ab","ab","a text that stands once"]', /"ab","ab"/, /\$/],
];

/** The same with fields named too. */
const WITH_FIELDS: typeof PROGRAMS = [
  [
    'a method, called on its object',
    'let a=[3,1,2];answer=[a.concat(4).concat(5).concat(6).concat(7).concat(8),[0].concat(a)]',
    /a\[\$0\$\]\(4\)\[\$0\$\]/,
    /\.concat/,
  ],
  [
    'a field that may be missing',
    'let a={childOfAll:{childOfAll:null}};answer=[a?.childOfAll?.childOfAll?.childOfAll,a.childOfAll.childOfAll]',
    /a\?\.\[\$0\$\]\?\.\[\$0\$\]/,
    /\.childOfAll/,
  ],
  [
    'a field that is written to, taken away or made with',
    'let a={SomeMaker:class{}};a.extentOfAll=1;a.extentOfAll+=2;answer=[a.extentOfAll,delete a.extentOfAll,new a.SomeMaker()instanceof a.SomeMaker,new a.SomeMaker()instanceof a.SomeMaker]',
    /\]\+=2.*delete a\[.*new a\[/,
    /\.(?:extentOfAll|SomeMaker)/,
  ],
  [
    'a field of a number, of what stands in brackets, and not of a parent',
    'class A{valueOfAll(){return 1}}class B extends A{valueOfAll(){return super.valueOfAll()}}answer=[new B().valueOfAll(),(0,new A).valueOfAll(),(1.5).valueOfAll,1.5.valueOfAll]',
    /super\.valueOfAll.*\(1\.5\)\[\$0\$\],1\.5\[/,
    /\)\.valueOfAll/,
  ],
  [
    'a field that is taken out under another name, in any place where that may be',
    'let f=({childOfAll:a})=>a,{childOfAll:{childOfAll:b=3}}={childOfAll:{}},c;({childOfAll:c}={childOfAll:4});answer=[f({childOfAll:1}),b,c]',
    /\{\[ ?\$0\$ ?\]:a\}/,
    /\{childOfAll:[abc{][^}]*\}=/,
  ],
  [
    'a field of a table that is made once, and of no other',
    'let a=[{nameOfAll:1},{nameOfAll:2,get nameOfOne(){return 3}},{nameOfAll(){}}],f=()=>({nameOfAll:4});answer=[a[0].nameOfAll,a[1].nameOfAll,f().nameOfAll,typeof a[2].nameOfAll]',
    /\{\[\$0\$\]:1\}.*\{nameOfAll:4\}/,
    /\.nameOfAll/,
  ],
  [
    'nothing, and what is not there',
    'let f=a=>[a===null,a===void 0,a??null,a===null?void 0:null,void f,void 0,void 0,void 0,void 0,null,null];answer=[f(null),f(),f(1)].map(a=>a.map(String))',
    /void f/,
    /void 0.*void 0/,
  ],
  [
    'not in a loop, where a name is slower',
    'answer=0;for(let a of["abc","de"])answer+=[a.codePointAt(0),a.codePointAt(1),a.codePointAt(2)].length',
    /a\.codePointAt\(0\)/,
    /\$/,
  ],
];

describe('a script with names for what it repeats', () => {
  test.each(PROGRAMS)('%s: does the same', (_, body, wanted, unwanted) => {
    const named = namedOnce(inOne(body));
    expect(answerOf(named)).toEqual(answerOf(inOne(body)));
    expect(named).toMatch(wanted);
    expect(named).not.toMatch(unwanted);
  });

  test.each(WITH_FIELDS)('%s: does the same', (_, body, wanted, unwanted) => {
    const named = namedOnce(inOne(body), true);
    expect(answerOf(named)).toEqual(answerOf(inOne(body)));
    expect(named).toMatch(wanted);
    expect(named).not.toMatch(unwanted);
    // Unless they are asked for, fields stay as they are.
    expect(namedOnce(inOne(body))).not.toMatch(/\w\[\$/);
  });

  test('is strict as before', () => {
    const code = inOne('answer=[function(){return this}()===void 0,"a long text","a long text","a long text"]');
    expect(answerOf(namedOnce(code))).toEqual(answerOf(code));
    expect(answerOf(namedOnce(code))[0]).toBe(true);
  });
});
