// Builds the three files of the add-on: node src/build.mjs [FOLDER]. The same sources give the same bytes in any folder.
// Prints what each folder of the sources weighs in them.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'acorn';
import { build, transform } from 'esbuild';
import { lengthUnitsOnly } from './lengthUnitsOnly.mjs';

/** The folder of this project: the nearest one upwards with a package.json, wherever the running script lies in it. */
export const projectFolder = nearestPackage(import.meta.dirname);
/** Where the bundle keeps its exports; the declared functions below it call in there. */
const INNER_NAME = '__plankLedger';

const common = {
  absWorkingDir: projectFolder,
  bundle: true,
  write: false,
  metafile: true,
  charset: 'utf8',
  // The platform's parser is older than its engine: no optional chaining, class fields, private names or `1n`.
  target: 'es2019',
  legalComments: 'none',
  logLevel: 'error',
  plugins: [lengthUnitsOnly],
};

/** The texts of the three files, by name. */
export async function addOnFiles() {
  return (await weighedFiles()).files;
}

/** Writes the three files into `folder`; gives their texts, and the bytes of each that every source folder takes up. */
export async function buildAddOn(folder) {
  const { files, weights } = await weighedFiles();
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return { files, weights };
}

async function weighedFiles() {
  const [code, page] = [await codeFile(), await sidebarFile()];
  return {
    files: { 'Code.js': code.text, 'Sidebar.html': page.text, 'appsscript.json': read('src/appsscript.json') },
    weights: { 'Code.js': folderWeights(code.metafile), 'Sidebar.html': folderWeights(page.metafile) },
  };
}

/** Bytes of a bundle by the folder or package they come from, the heaviest first. */
function folderWeights(metafile) {
  const weights = new Map();
  for (const [file, { bytesInOutput }] of Object.entries(Object.values(metafile.outputs)[0].inputs)) {
    const folder = /^src\/(\w+)\//.exec(file)?.[1] ?? (file.includes('node_modules/') ? 'packages' : 'src');
    weights.set(folder, (weights.get(folder) ?? 0) + bytesInOutput);
  }
  return Object.fromEntries([...weights].toSorted(([, a], [, b]) => b - a));
}

/** The server's half: one closed bundle, then a declared function, with its help, for everything that may be called. */
async function codeFile() {
  const probe = await build({ ...common, entryPoints: ['src/main.ts'], format: 'esm', outfile: 'Code.js' });
  const declarations = await declaredFunctions(Object.keys(probe.metafile.inputs));
  const exported = Object.values(probe.metafile.outputs)[0].exports.toSorted();
  const result = await build({
    ...common,
    entryPoints: ['src/main.ts'],
    format: 'iife',
    globalName: INNER_NAME,
    minify: true,
    outfile: 'Code.js',
    banner: { js: `/** @OnlyCurrentDoc */\n/*!\n${notices(probe.metafile)}\n*/` },
    footer: { js: exported.map((name) => outerFunction(name, declarations)).join('\n\n') },
  });
  return { text: result.outputFiles[0].text, metafile: result.metafile };
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

/** The browser's half: the page with its style and script in it, so that it needs nothing else. */
async function sidebarFile() {
  const script = await build({
    ...common,
    entryPoints: ['src/sidebar/sidebar.ts'],
    format: 'iife',
    minify: true,
    outfile: 'sidebar.js',
    // The service that serves the page cuts what looks like a comment out of a template literal.
    supported: { 'template-literal': false },
  });
  const style = await build({
    ...common,
    entryPoints: ['src/sidebar/sidebar.css'],
    minify: true,
    outfile: 'sidebar.css',
  });
  const page = read('src/sidebar/Sidebar.html');
  const notice = notices(script.metafile);
  const filled = insert(
    insert(page, '<!-- style -->', `<style>${style.outputFiles[0].text.trim()}</style>`),
    '<!-- script -->',
    `${notice && `<!--\n${notice.replaceAll('--', '- -')}\n-->\n`}<script>${script.outputFiles[0].text.trim()}</script>`,
  );
  // `<?` starts a scriptlet on the platform.
  if (filled.includes('<?')) throw new Error('Sidebar.html has "<?" in it, which the platform takes for a scriptlet');
  return { text: filled, metafile: script.metafile };
}

function insert(page, mark, text) {
  if (page.split(mark).length !== 2) throw new Error(`src/sidebar/Sidebar.html must have ${mark} exactly once`);
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
  const folder = resolve(process.argv[2] ?? join(projectFolder, 'dist'));
  const { files, weights } = await buildAddOn(folder);
  const shown = (bytes) => bytes.toLocaleString('en-US');
  for (const [name, text] of Object.entries(files)) {
    console.log(`${relative(process.cwd(), join(folder, name)) || name}  ${shown(Buffer.byteLength(text))} bytes`);
    const parts = Object.entries(weights[name] ?? {}).map(([part, bytes]) => `${part} ${shown(bytes)}`);
    if (parts.length > 0) console.log(`  ${parts.join(', ')}`);
  }
}
