/** Test files and what they import, with the changes in it, made ready to be loaded by a process of its own. */
import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, type Plugin } from 'esbuild';
import { projectFolder } from '../../../src/build.mjs';
import { type Mutant, switched, withoutTypes } from './mutate';

/** A change in a file, with its number among all of them. */
export interface Placed extends Mutant {
  readonly file: string;
  readonly number: number;
}

const here = 'tests/bench/mutants';

/** @returns the file to be run */
export async function bundled(folder: string, tests: readonly string[], mutants: readonly Placed[]): Promise<string> {
  const changed = [...new Set(mutants.map(({ file }) => file))];
  const loaders = (files: readonly string[]) =>
    files.map((file) => `() => import(${JSON.stringify(`./${file}`)})`).join(', ');
  await build({
    stdin: {
      contents: `import { listen } from './${here}/runner';
        listen({ changed: [${loaders(changed)}], tests: [${loaders(tests)}] });`,
      resolveDir: projectFolder,
      sourcefile: 'run.ts',
    },
    outdir: folder,
    entryNames: 'run',
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    plugins: [inPlaceOf, filesAsTheyLie(mutants)],
    logLevel: 'error',
  });
  return join(folder, 'run.mjs');
}

/** The unit library's one class instead of its slow front door, and our own `test` instead of vitest's. */
const inPlaceOf: Plugin = {
  name: 'in place of',
  setup(build) {
    build.onResolve({ filter: /^mathjs$/ }, ({ importer }) =>
      importer.endsWith('unitLibrary.ts') ? { path: join(projectFolder, UNIT_CLASS) } : undefined,
    );
    build.onResolve({ filter: /^vitest$/ }, ({ importer }) =>
      importer.endsWith('collect.ts') ? undefined : { path: join(projectFolder, here, 'collect.ts') },
    );
  },
};

/** Where it is from here, as `unitClassOnly` cannot know it in a bundle. */
const UNIT_CLASS = 'node_modules/mathjs/lib/esm/type/unit/Unit.js';

/** Our files with the changes in them; they lie elsewhere now, and are told where they lay. */
function filesAsTheyLie(mutants: readonly Placed[]): Plugin {
  return {
    name: 'files as they lie',
    setup(build) {
      build.onLoad({ filter: /\.ts$/ }, ({ path }) => {
        const file = relative(projectFolder, path).replaceAll('\\', '/');
        const own = mutants.filter((mutant) => mutant.file === file);
        const code = withoutTypes(readFileSync(path, 'utf8'));
        const contents = own.length === 0 ? code : `${IMPORT}${switched(code, own)}`;
        return { contents: contents.replace(...DIRNAME(path)).replace(...URL_OF(path)), loader: 'js' };
      });
    },
  };
}

const IMPORT = `import { isMutant } from ${JSON.stringify(join(projectFolder, here, 'switch.ts'))};\n`;
const DIRNAME = (path: string) => [/\bimport\.meta\.dirname\b/g, JSON.stringify(dirname(path))] as const;
const URL_OF = (path: string) => [/\bimport\.meta\.url\b/g, JSON.stringify(pathToFileURL(path).href)] as const;
