// Puts into the bundles what the unit library answers, in place of the library: the millimetres in every unit of length
// that it knows by a word, and the square millimetres in every unit of area. The library is asked when building; its class
// would be 12 KB of each bundle for some seventy numbers.
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const CLASS_FILE = 'node_modules/mathjs/lib/esm/type/unit/Unit.js';

/** Where the class stands: the package's own front door would bring in all of it. */
export const UNIT_CLASS_FILE = fileURLToPath(new URL(`../${CLASS_FILE}`, import.meta.url));

/** The esbuild plugin that goes straight to the class: for running in Node. */
export const unitClassOnly = classAt(UNIT_CLASS_FILE);

function classAt(path) {
  return {
    name: 'unit class only',
    setup(build) {
      build.onResolve({ filter: /^mathjs$/ }, ({ importer }) =>
        importer.endsWith('unitLibrary.ts') ? { path } : undefined,
      );
    },
  };
}

/** The esbuild plugin for the bundles. The table stands where the class did, so that the bundle keeps its notice. */
export const lengthUnitsOnly = {
  name: 'length units only',
  setup(build) {
    // This file may itself have been bundled into another folder.
    const folder = build.initialOptions.absWorkingDir;
    classAt(join(folder, CLASS_FILE)).setup(build);
    build.onLoad({ filter: /[\\/]takeoff[\\/]text[\\/]unitLibrary\.ts$/ }, () => ({ contents: DOOR }));
    build.onLoad({ filter: /mathjs[\\/]lib[\\/]esm[\\/]type[\\/]unit[\\/]Unit\.js$/ }, async () => ({
      contents: await tablesAsSource(folder),
    }));
  },
};

/** Does what `unitLibrary.ts` does, with the tables. */
const DOOR = `
import { LENGTHS, AREAS } from 'mathjs';
export const millimetresPer = (unitName) => LENGTHS.get(unitName);
export const squareMillimetresPer = (unitName) => AREAS.get(unitName);
`;

let source;

/** The module of both tables, worked out once. */
function tablesAsSource(projectFolder) {
  source ??= unitTables(projectFolder).then((tables) =>
    Object.entries(tables)
      .map(([name, entries]) => `export const ${name} = /* @__PURE__ */ new Map(${JSON.stringify(entries)});`)
      .join('\n'),
  );
  return source;
}

/** Name and size of every unit: `LENGTHS` in millimetres, `AREAS` in square millimetres. */
export async function unitTables(projectFolder) {
  const [{ Unit }, { millimetresPer, squareMillimetresPer }] = [await import('mathjs'), await ourDoor(projectFolder)];
  const names = wordsFor(Unit);
  const sizes = (sizeOf) => names.flatMap((name) => (sizeOf(name) === undefined ? [] : [[name, sizeOf(name)]]));
  const tables = { LENGTHS: sizes(millimetresPer), AREAS: sizes(squareMillimetresPer) };
  if (tables.LENGTHS.length < 40 || tables.AREAS.length < 10)
    throw new Error('the unit library has another form than expected');
  return tables;
}

/** Every word that the library takes for a length or an area a room could be measured in. */
function wordsFor({ UNITS }) {
  const units = Object.entries(UNITS).filter(([, { base }]) => ['LENGTH', 'SURFACE'].includes(base?.key));
  const words = units.flatMap(([name, { prefixes }]) => {
    // Prefixes of a thousandth to a thousand: no room is measured in nanometres.
    const used = Object.values(prefixes).filter(({ value }) => value >= 1e-3 && value <= 1e3);
    return used.map((prefix) => prefix.name + name);
  });
  return words.filter((word) => /^[a-z]+$/.test(word));
}

/** `unitLibrary.ts` as it is, with the library behind it. */
async function ourDoor(projectFolder) {
  const { outputFiles } = await build({
    entryPoints: [join(projectFolder, 'src/takeoff/text/unitLibrary.ts')],
    plugins: [classAt(join(projectFolder, CLASS_FILE))],
    bundle: true,
    write: false,
    format: 'esm',
    logLevel: 'error',
  });
  return import(`data:text/javascript,${encodeURIComponent(outputFiles[0].text)}`);
}
