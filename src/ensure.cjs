// What every command begins with: node src/ensure.cjs [--browser]. It looks at the version of Node, and at options that npm
// took for its own; then src/install.mjs installs what is missing. An old Node reads neither modules nor today's syntax,
// so this file has neither.
'use strict';
const { nodeProblem } = require('./nodeVersion.cjs');

const OPTIONS = ['print', 'folder', 'rooms', 'cases', 'out', 'effort'];

/** `npm start --print` hands `--print` to npm, which puts it into the environment: then a `--` is missing. */
function optionProblem(environment) {
  const taken = OPTIONS.find((option) => environment[`npm_config_${option}`] !== undefined);
  if (taken === undefined) return '';
  const command = environment.npm_lifecycle_event === 'plan' ? 'npm run plan' : 'npm start';
  return `npm took --${taken} for an option of its own. Write -- before it: ${command} -- --${taken}`;
}

const wanted = require('../package.json').engines.node;
const problem = nodeProblem(process.versions.node, wanted) || optionProblem(process.env);
if (problem === '') import('./install.mjs');
else {
  console.error(problem);
  process.exitCode = 1;
}
