/** The add-on as its sources build it now, built only when they have changed since the last start. */
import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { buildAddOn, projectFolder } from '../build.mjs';

type AddOnFiles = Awaited<ReturnType<typeof buildAddOn>>['files'];

const CACHE = join(projectFolder, 'node_modules/.cache/plank-ledger');

/** Texts of the built files; `dist/` is brought up to date when they had to be built. */
export async function builtAddOn(): Promise<AddOnFiles> {
  const file = join(CACHE, `add-on-${await fingerprintOfSources()}.json`);
  const known = await readFile(file, 'utf8').then(JSON.parse, () => undefined);
  if (known) return known as AddOnFiles;
  const { files } = await buildAddOn(join(projectFolder, 'dist'));
  // Only saves time: a folder that cannot be written to is no reason not to start.
  await mkdir(CACHE, { recursive: true }).catch(() => {});
  await writeFile(file, JSON.stringify(files)).catch(() => {});
  return files;
}

/** Of everything that the build reads: the sources, and the packages by their lock file. */
async function fingerprintOfSources(): Promise<string> {
  const folder = join(projectFolder, 'src');
  const names = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = names
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => !path.startsWith(join(folder, 'workbook')));
  const hash = createHash('sha256');
  for (const path of [...paths.sort(), join(projectFolder, 'package-lock.json')]) {
    hash.update(`${path}\n`).update(await readFile(path));
  }
  return hash.digest('hex').slice(0, 24);
}
