// Builds the four files of the add-on: node src/build.mjs [FOLDER]. The same sources give the same bytes in any folder.
// Prints what each folder of the sources weighs in them.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { minify } from '@swc/core';
import { parse } from 'acorn';
import { build, transform } from 'esbuild';
import { arrowsOnTop } from './arrowsOnTop.mjs';
import { fieldsInPlace } from './fieldsInPlace.mjs';
import { lengthUnitsOnly } from './lengthUnitsOnly.mjs';
import { namedOnce } from './namedOnce.mjs';
import { OWN_FIELDS } from './ownFields.mjs';
import { commentsLookedLike, plainScript, troublesIn, withPlusSigns } from './plainScript.mjs';
import {
  attributeNames,
  declaredMembers,
  interfaceOf,
  knownDeclarations,
  patternOf,
  SHORTEST,
  shortenableNames,
} from './shortNames.mjs';
import { onlyReadEntries } from './unreadEntries.mjs';

/** The folder of this project: the nearest one upwards with a package.json, wherever the running script lies in it. */
export const projectFolder = nearestPackage(import.meta.dirname);
/** Where the bundle keeps its exports; the declared functions below it call in there. */
const INNER_NAME = '__plankLedger';

const common = {
  absWorkingDir: projectFolder,
  bundle: true,
  write: false,
  metafile: true,
  charset: 'ascii',
  // The platform's parser is older than its engine: no optional chaining, class fields, private names or `1n`.
  target: 'es2019',
  legalComments: 'none',
  define: { 'Number.POSITIVE_INFINITY': 'Infinity' },
  logLevel: 'error',
  plugins: [lengthUnitsOnly],
};

/** What passes between page and server, is kept with a tab or written to a file is named in these: their words stay. */
const NAMED_OUTSIDE = [
  'src/cutting/judge/jobFile.ts',
  ...['src/tabs/block.ts', 'src/tabs/packed.ts', 'src/tabs/tabStore.ts', 'src/tabs/triedCalls.ts'],
  ...['src/sheet/menu.ts', 'src/sheet/ownedTabs.ts', 'src/sheet/writeTab.ts'],
];

/**
 * The same of the page: what it sends and is answered, what it makes fingerprints of, and what becomes a file. An interface is
 * enough where the rest of its file is only worked with.
 */
const NAMED_OUTSIDE_THE_PAGE = [
  'src/cutting/judge/jobFile.ts',
  ...['src/tabs/block.ts', 'src/tabs/packed.ts', 'src/tabs/tabStore.ts', 'src/sidebar/sheetStore.ts'],
  ...['src/takeoff/entry.ts', 'src/order/houseEntry.ts'],
];
const INTERFACES_OUTSIDE_THE_PAGE = {
  'src/cutting/job.ts': ['PlannedRow', 'PlannedPiece'],
  'src/tabs/planMark.ts': ['PlanMark'],
};

let made;

/** The texts of the four files, by name; worked out once, from the sources as they are then. */
export async function addOnFiles() {
  made ??= weighedFiles();
  return (await made).files;
}

/** Code.js with no fields shortened but these: with none it must do what it does as it is built. */
export async function codeShortening(names) {
  return (await codeFile(names)).text;
}

/** Sidebar.html with no fields shortened but these, and no other step that only a page goes through. */
export async function pageShortening(names) {
  return (await sidebarFile({ shortened: names, isShort: false })).text;
}

/** Writes the four files into `folder`; gives their texts, and the bytes of each that every source folder takes up. */
export async function buildAddOn(folder) {
  const { files, weights } = await weighedFiles();
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return { files, weights };
}

async function weighedFiles() {
  const [code, page, check] = [await codeFile(), await sidebarFile(), await checkFile()];
  return {
    files: {
      'Code.js': code.text,
      'Sidebar.html': page.text,
      'Check.html': check.text,
      'appsscript.json': read('src/appsscript.json'),
    },
    weights: {
      'Code.js': folderWeights(code),
      'Sidebar.html': folderWeights(page),
      'Check.html': folderWeights(check),
    },
  };
}

/** Bytes of a script by the folder or package they come from, the heaviest first; what was saved at the end, in proportion. */
function folderWeights({ metafile, script }) {
  const [{ bytes, inputs }] = Object.values(metafile.outputs);
  const weights = new Map();
  for (const [file, { bytesInOutput }] of Object.entries(inputs)) {
    const folder = /^src\/(\w+)\//.exec(file)?.[1] ?? (file.includes('node_modules/') ? 'packages' : 'src');
    weights.set(folder, (weights.get(folder) ?? 0) + (bytesInOutput * script.length) / bytes);
  }
  const shown = [...weights].map(([folder, weight]) => [folder, Math.round(weight)]);
  return Object.fromEntries(shown.toSorted(([, a], [, b]) => b - a));
}

/** The server's half: one closed bundle, then a declared function, with its help, for everything that may be called. */
async function codeFile(shortened) {
  const probe = await build({ ...common, entryPoints: ['src/main.ts'], format: 'esm', outfile: 'Code.js' });
  const declarations = await declaredFunctions(Object.keys(probe.metafile.inputs));
  const exported = Object.values(probe.metafile.outputs)[0].exports.toSorted();
  const parameters = exported.flatMap((name) => declarations.get(name)?.parameters ?? []);
  const result = await build({
    ...common,
    plugins: [...common.plugins, onlyReadEntries(probe.outputFiles[0].text, projectFolder)],
    entryPoints: ['src/main.ts'],
    format: 'iife',
    globalName: INNER_NAME,
    minify: true,
    outfile: 'Code.js',
    mangleProps: patternOf(shortened ?? (await shortNamesOf(probe, parameters))),
  });
  const head = `/** @OnlyCurrentDoc */\n/*!\n${notices(probe.metafile)}\n*/`;
  const declared = exported.map((name) => outerFunction(name, declarations)).join('\n\n');
  const script = plainScript(await smaller(result.outputFiles[0].text, false));
  const text = `${head}\n${script}\n${declared}\n`;
  refuse(troublesIn('Code.js', text));
  return { text, script, metafile: result.metafile };
}

/** The fields of Code.js that nobody outside it knows. */
async function shortNamesOf(probe, parameters) {
  return shortenableNames({
    ...textsOf(probe),
    // The parameters of a function are the fields of its table of arguments, and stand in its sentences.
    kept: [...NAMED_OUTSIDE.map(read), ...parameters],
    declarations: await knownDeclarations(projectFolder),
  });
}

/** The fields of the page that are no attributes of elements, and those of which the compiler knows it. */
async function shortNamesOfPage(probe) {
  const declarations = await knownDeclarations(projectFolder, 'browser');
  const interfaces = Object.entries(INTERFACES_OUTSIDE_THE_PAGE).flatMap(([file, names]) =>
    names.map((name) => interfaceOf(read(file), name)),
  );
  const kept = [...NAMED_OUTSIDE_THE_PAGE.map(read), ...interfaces];
  const { code, packages } = textsOf(probe);
  const attributes = attributeNames(declarations);
  const byWord = shortenableNames({ code, packages, kept: [...kept, ...attributes], declarations });
  const own = OWN_FIELDS.map((name) => `a.${name};`).join('');
  return [...new Set([...byWord, ...shortenableNames({ code: own, packages, kept, declarations: [] })])];
}

/** The sources that the page is made of, from the folder of this project. */
export async function pageSources() {
  const { metafile } = await build({ ...common, entryPoints: ['src/sidebar/sidebar.ts'], outfile: 'sidebar.js' });
  return Object.keys(metafile.inputs).filter((file) => file.startsWith('src/'));
}

function textsOf({ outputFiles, metafile }) {
  const packages = Object.keys(metafile.inputs).filter((file) => file.includes('node_modules/'));
  return { code: outputFiles[0].text, packages: packages.map(read) };
}

/**
 * A second opinion on what is superfluous: joins statements and values that are used once.
 *
 * @param code a minified script
 * @param isPage whether it is loaded once, as a page is: then fields get names too, which the first run has to look up, and short functions
 *   are read when it is loaded
 */
async function smaller(code, isPage) {
  const format = { asciiOnly: true };
  // Functions are left where they are: written out where they are called, they win nothing. Nobody asks one for its
  // prototype, so those that do not ask who calls them become arrow functions.
  const compress = { passes: 3, inline: 0, ecma: 2019, unsafe_arrows: true };
  const join = async (text) => (await minify(text, { compress, mangle: false, format })).code;
  const joined = await join(code);
  const shorter = isPage ? await join(arrowsOnTop(fieldsInPlace(joined, await browserFields()))) : joined;
  const named = await minify(namedOnce(withPlusSigns(shorter), isPage), { compress: false, mangle: true, format });
  return named.code.trim();
}

/** Tells fields that a browser may change by itself, such as the length of a list, from those of our own. */
async function browserFields() {
  const names = new Set((await knownDeclarations(projectFolder, 'browser')).flatMap(declaredMembers));
  return (name) => name.length >= SHORTEST && names.has(name);
}

/**
 * A custom function must be a plain declaration with its help directly above it, which no bundler keeps; so it is
 * written again here, calling into the bundle.
 */
function outerFunction(name, declarations) {
  const found = declarations.get(name);
  if (!found)
    throw new Error(
      `${name} is exported by src/main.ts but is not a declared function with a /** */ block directly before it`,
    );
  const documented = [...found.help.matchAll(/@param\s+(?:\{[^}]*\}\s+)?\[?(\w+)/g)].map((match) => match[1]);
  if (documented.join() !== found.parameters.join()) {
    throw new Error(
      `${name}: the help documents (${documented.join(', ')}), the function takes (${found.parameters.join(', ')})`,
    );
  }
  return `${found.help}\nfunction ${name}(${documented.join(', ')}) {\n  return ${INNER_NAME}.${name}.apply(null, arguments);\n}`;
}

/** Every `export function` of these files that has a help block: name -> { help, parameters }. */
async function declaredFunctions(files) {
  const found = new Map();
  for (const file of files.filter((name) => name.startsWith('src/')).toSorted()) {
    const source = read(file);
    const parameters = await parametersOf(source);
    for (const match of source.matchAll(/(\/\*\*(?:[^*]|\*(?!\/))*\*\/)\s*export function (\w+)\s*\(/g)) {
      found.set(match[2], { help: match[1], parameters: parameters.get(match[2]) });
    }
  }
  return found;
}

/** Names of the parameters of every exported function, read from the code itself. */
async function parametersOf(source) {
  const { code } = await transform(source, { loader: 'ts', target: 'es2022' });
  const names = new Map();
  for (const { declaration } of parse(code, { ecmaVersion: 2022, sourceType: 'module' }).body) {
    if (declaration?.type !== 'FunctionDeclaration') continue;
    names.set(
      declaration.id.name,
      declaration.params.map((parameter) => (parameter.left ?? parameter).name),
    );
  }
  return names;
}

/** The browser's half. */
function sidebarFile(options) {
  return pageFile('Sidebar', 'src/sidebar', 'sidebar', options);
}

/** The page that checks a spreadsheet. Its names are few, and some are those of services: none is shortened. */
function checkFile() {
  return pageFile('Check', 'src/sidebar/check', 'check', { shortened: [] });
}

/** A page with its style and script in it, so that it needs nothing else. */
async function pageFile(name, folder, script, { shortened, isShort = true } = {}) {
  const options = {
    ...common,
    entryPoints: [`${folder}/${script}.ts`],
    outfile: `${script}.js`,
    // A browser reads it, not the platform's own parser.
    target: 'es2022',
    // The service that serves the page cuts what looks like a comment out of a template literal.
    supported: { 'template-literal': false },
  };
  const probe = await build({ ...options, format: 'esm' });
  const built = await build({
    ...options,
    plugins: [...common.plugins, onlyReadEntries(probe.outputFiles[0].text, projectFolder)],
    format: 'iife',
    minify: true,
    mangleProps: patternOf(shortened ?? (await shortNamesOfPage(probe))),
  });
  const style = await build({
    ...common,
    entryPoints: [`${folder}/${script}.css`],
    minify: true,
    outfile: `${script}.css`,
  });
  const source = `${folder}/${name}.html`;
  const notice = notices(built.metafile);
  const plain = plainScript(await smaller(built.outputFiles[0].text, isShort));
  const filled = insert(
    source,
    insert(
      source,
      read(source),
      '<!-- style -->',
      `<style>${style.outputFiles[0].text.trim().replaceAll(/.{1,190}}/g, '$&\n')}</style>`,
    ),
    '<!-- script -->',
    `${notice && `<!--\n${notice.replaceAll('--', '- -')}\n-->\n`}<script id="page-script" data-built="${sumOf(`\n${plain}`)}">\n${plain}</script>`,
  );
  refuse([...troublesIn(`${name}.html`, filled), ...commentsLookedLike(`${name}.html`, plain)]);
  // `<?` starts a scriptlet on the platform.
  if (filled.includes('<?')) throw new Error(`${name}.html has "<?" in it, which the platform takes for a scriptlet`);
  return { text: filled, script: plain, metafile: built.metafile };
}

/** Length and FNV-1a of a text, as `tabs/fingerprint.ts` has it: a page can say whether it has arrived as it was built. */
function sumOf(text) {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return `${text.length}-${hash >>> 0}`;
}

/** The platform, an editor or a browser on the way might change what stands there without a word. */
function refuse(troubles) {
  if (troubles.length > 0) throw new Error(`The build would not arrive as it is:\n${troubles.slice(0, 5).join('\n')}`);
}

function insert(source, page, mark, text) {
  if (page.split(mark).length !== 2) throw new Error(`${source} must have ${mark} exactly once`);
  return page.replace(mark, () => text);
}

/** What the licences of the packages in a bundle ask to be kept with it. */
function notices(metafile) {
  const used = Object.values(metafile.outputs)[0].inputs;
  const packages = new Set();
  for (const [file, { bytesInOutput }] of Object.entries(used)) {
    const match = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(file);
    if (match && bytesInOutput > 0) packages.add(match[1]);
  }
  const ours = `Plank Ledger. ${read('LICENSE')
    .split('\n')
    .find((line) => line.startsWith('Copyright'))}. MIT License.`;
  return [ours, ...[...packages].toSorted().map(packageNotice)].join('\n\n').replaceAll('*/', '* /');
}

function packageNotice(folder) {
  const { name, version, license } = JSON.parse(read(join(folder, 'package.json')));
  // Apache-2.0, section 4(d), wants the NOTICE file; the permissive others want their whole, short text.
  const text = read(join(folder, license === 'Apache-2.0' ? 'NOTICE' : 'LICENSE'));
  return `Contains parts of ${name} ${version} (${license}), bundled and minified:\n\n${text.trim()}`;
}

function nearestPackage(folder) {
  if (existsSync(join(folder, 'package.json'))) return folder;
  if (dirname(folder) === folder)
    throw new Error('No package.json above the running script: it lies outside the project');
  return nearestPackage(dirname(folder));
}

function read(file) {
  return readFileSync(join(projectFolder, file), 'utf8').replaceAll('\r\n', '\n');
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const [, , typed = join(projectFolder, 'dist'), ...more] = process.argv;
  if (typed.startsWith('-') || more.length > 0) {
    console.error(`${more[0] ?? typed}: npm run build takes one folder to build into, or nothing for dist.`);
    process.exit(1);
  }
  const folder = resolve(typed);
  const { files, weights } = await buildAddOn(folder);
  const shown = (bytes) => bytes.toLocaleString('en-US');
  for (const [name, text] of Object.entries(files)) {
    console.log(`${relative(process.cwd(), join(folder, name)) || name}  ${shown(Buffer.byteLength(text))} bytes`);
    const parts = Object.entries(weights[name] ?? {}).map(([part, bytes]) => `${part} ${shown(bytes)}`);
    if (parts.length > 0) console.log(`  ${parts.join(', ')}`);
  }
}
