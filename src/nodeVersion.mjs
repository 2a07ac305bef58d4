// Looks at the version of Node before anything else is loaded that an old one does not know. Itself it must run on any.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Why this version will not do, as a sentence; '' when it will. `wanted` is what package.json asks: `>=20.19`. */
export function nodeProblem(version, wanted) {
  const least = wanted
    .replace(/[^\d.]/g, '')
    .split('.')
    .map(Number);
  const found = version.split('.').map(Number);
  const at = least.findIndex((number, i) => number !== found[i]);
  if (at < 0 || found[at] > least[at]) return '';
  return `Node ${least.join('.')} or newer is needed, and this is Node ${version}. Get it from https://nodejs.org, or with your version manager, and try again.`;
}

const manifest = JSON.parse(readFileSync(fileURLToPath(new URL('../package.json', import.meta.url)), 'utf8'));
const problem = nodeProblem(process.versions.node, manifest.engines.node);
if (problem !== '') {
  console.error(problem);
  process.exit(1);
}
