// Where a Chromium is: shared by what installs one and by the tests that drive it.
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Chromium without windows: starts in half the time, with half the processes. Debian's name of file and package. */
export const BROWSER_SHELL = 'chromium-headless-shell';

const NAMES = [BROWSER_SHELL, 'chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** The file named by CHROMIUM_PATH if it exists, else the first Chromium on the PATH; undefined when there is none. */
export function findBrowser() {
  const named = process.env.CHROMIUM_PATH;
  if (named) return existsSync(named) ? named : undefined;
  return NAMES.map(findProgram).find((file) => file !== undefined);
}

/** The file of a program on the PATH; undefined when it is not there. */
export function findProgram(name) {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders.map((folder) => join(folder, name)).find((file) => existsSync(file));
}
