// Whether this version of Node will do. Written in the words of 2015: an old Node has to read it to say so.
'use strict';

/** Why this version will not do, as a sentence; '' when it will. `wanted` is what package.json asks: `>=20.19`. */
exports.nodeProblem = (version, wanted) => {
  const least = wanted
    .replace(/[^\d.]/g, '')
    .split('.')
    .map(Number);
  const found = version.split('.').map(Number);
  const at = least.findIndex((number, i) => number !== found[i]);
  if (at < 0 || found[at] > least[at]) return '';
  return `Node ${least.join('.')} or newer is needed, and this is Node ${version}. Get it from https://nodejs.org, or with your version manager, and try again.`;
};
