/** What the build does to a minified script so that it arrives as it is, and what it refuses to send. */
import { runInNewContext } from 'node:vm';
import { transformSync } from 'esbuild';
import { describe, expect, test } from 'vitest';
import { commentsLookedLike, LONGEST_LINE, plainScript, troublesIn } from '../src/plainScript.mjs';

const long = 'a long text — with 5′ 6″ in it, '.repeat(40);
const PROGRAMS: readonly (readonly [string, string])[] = [
  ['a long text', `var answer = ${JSON.stringify(long)}.length`],
  ['a long template', `var n = 2; var answer = \`${long}\${n + 1}\${\`${long}\`}\``],
  ['comment marks and backticks in strings', 'var answer = ["http://a/*b*/", "`", "a//b///c", "//"].join()'],
  [
    'patterns',
    'var answer = "a/b`c″′—½".replace(/[/*`]/g, "x").replace(/[″′]/g, "q").replace(/\\/\\//g, "").replace(/—|½/u, "-")',
  ],
  ['escapes at the end of a line', `var answer = ${JSON.stringify('\\\u2028\n\t"\u{1f600}'.repeat(60))}`],
  ['division beside patterns', 'var a = 8, g = 2; var answer = [a / 2 / g, /2/g.test("2"), a /g]'],
  [
    'a word that a line must not end after',
    `var answer = (function () { return ${'[1].concat('.repeat(60)}[]${')'.repeat(60)} })().length`,
  ],
  [
    'texts put together',
    // biome-ignore lint/suspicious/noTemplateCurlyInString: a program as text
    'var a = 2, b = [1, 2], c = null; var answer = [`${a}${a}`, `x${a + 1}y`, `${a}`.length, `n${c ?? "none"}`, `${`in${a}`}out`, `${b}` + 1, -`${a}1`, `l${a > 1 ? `m${b}` : ""}`, (() => `f${a}`)(), typeof `${a}`, `${c}` in { null: 1 }]',
  ],
  [
    'texts put together in turn',
    'var a = 2, b = [1, 2]; var answer = ["p".concat(a, "q").concat(a > 1 ? b : a).concat("r"), "s".concat(a).concat(b, a).length, -"".concat(1).concat(a), ["x"].concat(a).concat("y")]',
  ],
  [
    'texts that begin with a value',
    'var a = 2, b = [1, 2], c = null; var answer = ["".concat(a, "q"), "".concat(a, a), "".concat(a, b, "q"), -"".concat(1, "2"), "".concat(a > 1 ? b : a, "r").length, "".concat(c, "s", a), ["x"].map(t => "".concat(t === "x" ? a : b, "t")), "".concat(b, "u").concat(a), (function () { return "".concat(a, "v") })()]',
  ],
  ['a chain of signs', `var answer = ${Array.from({ length: 200 }, (_, i) => `${i}===${i}&&`).join('')}true`],
];

const answerOf = (code: string) => runInNewContext(`${code};answer`);

describe('a script made plain', () => {
  test.each(PROGRAMS)('%s: does the same, in short lines of ASCII', (name, source) => {
    const supported = { 'template-literal': name === 'a long template' };
    const { code } = transformSync(source, { minifyWhitespace: true, minifySyntax: true, charset: 'utf8', supported });
    const plain = plainScript(code.trim());
    expect(answerOf(plain)).toEqual(answerOf(code));
    expect(troublesIn('script', plain)).toEqual([]);
    if (name !== 'a long template') expect(commentsLookedLike('script', plain)).toEqual([]);
  });
});

describe('what the build refuses', () => {
  test('most of these scripts as they were: in long lines, with other characters, with what looks like a comment', () => {
    const untouched = PROGRAMS.filter(([, source]) => {
      const { code } = transformSync(source, { minifyWhitespace: true, charset: 'utf8' });
      return troublesIn('script', code.trim()).length + commentsLookedLike('script', code).length === 0;
    });
    expect(untouched.map(([name]) => name)).toEqual([
      'division beside patterns',
      'texts put together in turn',
      // Reckoned out by the minifier.
      'a chain of signs',
    ]);
  });

  test.each([
    ['a long line', 'x'.repeat(LONGEST_LINE + 1), /line 1 has 200 characters/],
    ['another character', 'fine\nnot — fine', /line 2 has a "—"/],
  ])('%s', (_, text, told) => {
    expect(troublesIn('file', text)[0]).toMatch(told);
  });

  test.each(['var a = "http://b"', "var a = '/* b */'", 'var a = "`"', 'var a = /[/*]/', 'var a = `b`'])(
    'in the script of the page: %s',
    (code) => {
      expect(commentsLookedLike('page', code)).toHaveLength(code.includes('= `') ? 2 : 1);
    },
  );
});
