// Makes a fresh clone ready, for src/ensure.cjs: installs what is missing, with --browser also Chromium, and nothing else.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { BROWSER_SHELL, findBrowser, findProgram } from './findBrowser.mjs';

const root = resolve(import.meta.dirname, '..');

/** Installs the locked packages when node_modules is not what the lock file says. */
function ensurePackages() {
  if (existsSync(join(root, 'node_modules/.package-lock.json')) && installedAsLocked()) return;
  console.error('Installing the packages of package-lock.json ...');
  // Without a network npm would try again for minutes, and say nothing.
  const patience = ['--fetch-retry-mintimeout=1000', '--fetch-retry-maxtimeout=5000'];
  const args = ['ci', '--no-audit', '--no-fund', '--loglevel=error', ...patience];
  const { status } = spawnSync('npm', args, {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  if (status !== 0) {
    stop(
      'The packages could not be installed: npm ci failed, its messages stand above. It needs the network; once the packages are there, npm start does not.',
    );
  }
}

/** As the lock file says that npm leaves in node_modules; what we call ourselves must be there, too. */
function installedAsLocked() {
  const wanted = packagesOf('package-lock.json');
  const called = Object.keys(wanted[''].devDependencies);
  if (!called.every((name) => existsSync(join(root, 'node_modules', name, 'package.json')))) return false;
  const found = packagesOf('node_modules/.package-lock.json');
  return Object.entries(wanted).every(
    ([name, entry]) => name === '' || entry.optional || found[name]?.version === entry.version,
  );
}

function packagesOf(file) {
  return JSON.parse(readFileSync(join(root, file), 'utf8')).packages;
}

/**
 * Installs Debian's Chromium when there is no browser and we may; tells what to do when we may not. CI gets the shell
 * without windows even where another Chromium is: that one was seen to start and never show a page.
 */
function ensureBrowser() {
  const named = process.env.CHROMIUM_PATH;
  if (named && !existsSync(named))
    stop(`CHROMIUM_PATH names ${named}, and there is no such file. Correct it or unset it.`);
  const mayInstall = process.getuid?.() === 0 && findProgram('apt-get');
  const isGoodEnough = findProgram(BROWSER_SHELL) || named || !process.env.CI || !mayInstall;
  if (findBrowser() && isGoodEnough) return;
  if (!mayInstall) {
    stop(
      'The tests need Chromium and found none. Install it (Debian, Ubuntu: sudo apt-get install chromium) or set CHROMIUM_PATH to its file, then run npm test again.',
    );
  }
  console.error('Installing Chromium with apt-get ...');
  aptGet('update', '-qq');
  aptGet('install', '-y', '-qq', '--no-install-recommends', BROWSER_SHELL);
  if (!findBrowser()) aptGet('install', '-y', '-qq', '--no-install-recommends', 'chromium');
  if (!findBrowser()) stop('The tests need Chromium, and apt-get could not install it: its messages stand above.');
}

function aptGet(...args) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync('apt-get', args, { stdio: ['ignore', 2, 2], env });
}

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}

ensurePackages();
if (process.argv.includes('--browser')) ensureBrowser();
