/** The add-on as its sources build it now, built only when they have changed since it was built last. */
import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { addOnFiles, projectFolder } from '../build.mjs';

type AddOnFiles = Awaited<ReturnType<typeof addOnFiles>>;

const CACHE = join(projectFolder, 'node_modules/.cache/plank-ledger');

/** Texts of the built files; `dist/` is brought up to date. */
export async function builtAddOn(): Promise<AddOnFiles> {
  const files = await keptAddOn();
  const folder = join(projectFolder, 'dist');
  for (const [name, text] of Object.entries(files)) {
    const file = join(folder, name);
    if ((await readFile(file, 'utf8').catch(() => '')) === text) continue;
    await mkdir(folder, { recursive: true });
    await writeFile(file, text);
  }
  return files;
}

/** Texts of the built files, kept for the next process that asks for them. */
export async function keptAddOn(): Promise<AddOnFiles> {
  const name = `add-on-${await fingerprintOfSources()}.json`;
  // A file that another process is still writing is not JSON yet.
  const known = await readFile(join(CACHE, name), 'utf8').then(JSON.parse, () => undefined);
  if (known) return known as AddOnFiles;
  const files = await addOnFiles();
  // Only saves time: a folder that cannot be written to is no reason not to start.
  await keep(name, JSON.stringify(files)).catch(() => {});
  return files;
}

/** Writes a file in the place of those of earlier sources. */
async function keep(name: string, text: string): Promise<void> {
  await mkdir(CACHE, { recursive: true });
  await writeFile(join(CACHE, name), text);
  const older = (await readdir(CACHE)).filter((one) => one.startsWith('add-on-') && one !== name);
  for (const one of older) await rm(join(CACHE, one), { force: true });
}

/** Of everything that the build reads: the sources, the licence in the notices, and the packages by their lock file. */
async function fingerprintOfSources(): Promise<string> {
  const folder = join(projectFolder, 'src');
  const names = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = names
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => !path.startsWith(join(folder, 'workbook')));
  const others = ['LICENSE', 'package.json', 'package-lock.json', 'tsconfig.json'];
  const hash = createHash('sha256');
  for (const path of [...paths.sort(), ...others.map((name) => join(projectFolder, name))]) {
    hash.update(`${path}\n`).update(await readFile(path));
  }
  return hash.digest('hex').slice(0, 24);
}
