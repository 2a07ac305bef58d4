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
  const silence = whyNoAnswer();
  // Without an answer npm may still have all of them in its cache; that it has not is what is to be told, not its own words.
  const { status } = npm([...CI, ...(silence === '' ? PATIENCE : ['--offline'])], silence === '' ? 2 : 'ignore');
  if (status === 0) return;
  if (silence === '') stop('The packages could not be installed: npm ci failed, its messages stand above.');
  const source = npm(['config', 'get', 'registry']).stdout.trim();
  stop(
    `The packages are missing, and ${source} does not answer (${silence}). Connect this computer to the network, then type npm ci. Once the packages are there, no network is needed.`,
  );
}

const CI = ['ci', '--no-audit', '--no-fund', '--loglevel=error'];
/** Left to itself, npm waits 10 s and then a minute before it tries again, and says nothing (`npm help config`). */
const PATIENCE = ['--fetch-retry-mintimeout=1000', '--fetch-retry-maxtimeout=5000'];
const NO_PATIENCE = ['--fetch-retries=0', '--fetch-timeout=8000'];

/** Asks for nothing, once. @returns '' for an answer, even a refusal such as E404; else the code npm gives for none */
function whyNoAnswer() {
  const { status, stderr } = npm(['ping', ...NO_PATIENCE]);
  const code = /npm error code (\S+)/.exec(stderr)?.[1] ?? 'no code';
  return status === 0 || /^E\d{3}$/.test(code) ? '' : code;
}

/** Runs npm as a person would. @param told where its messages go: kept for us, unless said otherwise */
function npm(args, told = 'pipe') {
  return spawnSync('npm', args, {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', told, told],
    shell: process.platform === 'win32',
  });
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
