/** Fields of a parameter that the build reads where they are used: that the script does the same. */
import { runInNewContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import { fieldsInPlace } from '../src/fieldsInPlace.mjs';

const answerOf = (code: string) => runInNewContext(`"use strict";var answer;${code};answer`);
/** As the build asks: the language may change the length of a list. */
const inPlace = (code: string) => fieldsInPlace(code, (name) => name === 'length');

describe('a field is read in place', () => {
  test.each([
    ['used once', 'const f=({a:e,b:t})=>e+t;answer=f({a:1,b:2})', /=>\$\w+\.a\+\$\w+\.b/],
    ['used more often where it is shorter', 'answer=(({a:e})=>e+e)({a:2})', /\.a\+\$\w+\.a/],
    ['not used at all', 'const f=({a:e,b:t})=>t;answer=f({b:2})', /=>\$\w+\.b/],
    [
      'called, with no object to be called on',
      'answer=[({a:e})=>e()].map(f=>f({a(){return this}}))',
      /\(0,\$\w+\.a\)\(\)/,
    ],
    ['that becomes a field', 'answer=(({a:e})=>({e}))({a:3})', /\(\{e:\$\w+\.a\}\)/],
    ['that is live, before anything is done', 'answer=[[1,2]].map(({length:e})=>Math.abs(e))', /abs\(\$\w+\.length\)/],
    ['that is set elsewhere, before anything is done', 'let o={};o.a=4;answer=(({a:e})=>e)(o)', /=>\$\w+\.a/],
  ])('%s', (_, code, wanted) => {
    expect(inPlace(code)).toMatch(wanted);
    expect(answerOf(inPlace(code))).toEqual(answerOf(code));
  });
});

describe('a field is taken beforehand', () => {
  test.each([
    ['when the script may have set it', 'let o={a:1};answer=(({a:e},f)=>[f(),e])(o,()=>{o.a=2})'],
    ['when the script counts it on', 'let o={a:1};answer=(({a:e},f)=>[f(),e])(o,()=>o.a++)'],
    ['when the script may have taken it away', 'let o={a:1};answer=(({a:e},f)=>[f(),e])(o,()=>delete o.a)'],
    ['when a list may have grown', 'let o=[1];answer=(({length:e},f)=>[f(),e])(o,()=>o.push(2))'],
    ['in a loop', 'function f({a:e}){let s=0;for(let i=0;i<3;i++)s+=e;return s}answer=f({a:2})'],
    ['in a function further in', 'answer=(({a:e})=>[1,2].map(i=>i+e))({a:2})'],
    ['when its name is bound anew further in', 'answer=(({a:e})=>e+(e=>e)(5))({a:2})'],
    ['when it is written to', 'answer=(({a:e})=>{e+=1;return e})({a:2})'],
    ['when it is counted on', 'answer=(({a:e})=>e++ +e)({a:2})'],
    ['when it is set with others', 'answer=(({a:e})=>{[e]=[7];return e})({a:2})'],
    ['when there is a value instead', 'answer=(({a:e=5})=>e)({})'],
    ['when the rest is wanted too', 'answer=(({a:e,...t})=>[e,t])({a:1,b:2})'],
    ['when it is shorter so', 'answer=(({a:e})=>e+e+e+e+e+e+e)({a:1})'],
  ])('%s', (_, code) => {
    expect(inPlace(code)).toBe(code);
  });
});
