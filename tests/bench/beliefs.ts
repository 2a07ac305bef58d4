/**
 * The table of what we believe of the spreadsheet service, with where each is known from:
 *
 *   npm run bench -- beliefs
 *
 * `live` means that only a run of "Check this spreadsheet" on the live service settles it.
 */
import { LIVE } from '../../src/sidebar/check/belief';
import { cellBeliefs, INPUTS } from '../../src/sidebar/check/cellBeliefs';
import { COPY_BELIEFS } from '../../src/sidebar/check/copyBeliefs';
import { PAGE_BELIEFS } from '../../src/sidebar/check/pageBeliefs';
import { PASSING_BELIEFS } from '../../src/sidebar/check/passingBeliefs';
import { TAB_BELIEFS } from '../../src/sidebar/check/tabBeliefs';
import { VALUE_BELIEFS } from '../../src/sidebar/check/valueBeliefs';

const KINDS = [
  ['values, formulas and formats', VALUE_BELIEFS],
  ['copies over a tab', COPY_BELIEFS],
  ['tabs, marks and locks', TAB_BELIEFS],
  ['functions in cells', cellBeliefs(INPUTS.length)],
  ['the page', PAGE_BELIEFS],
  ['what passes between page and server', PASSING_BELIEFS],
] as const;

/** Every belief, and how many there are of each kind. */
export function beliefLines(): readonly string[] {
  const all = KINDS.flatMap(([, beliefs]) => [...beliefs]);
  const count = (is: (belief: (typeof all)[number]) => boolean) => all.filter(is).length;
  const lines = KINDS.flatMap(([kind, beliefs]) => [
    `${kind}: ${beliefs.length}`,
    ...beliefs.map(({ what, expected, source }) => `  ${what}: ${expected.join(' or ') || 'only noted'} (${source})`),
  ]);
  const live = count(({ source, expected }) => source === LIVE && expected.length > 0);
  const noted = count(({ expected }) => expected.length === 0);
  return [
    ...lines,
    `${all.length} beliefs: ${all.length - live - noted} with a source, ${live} to be settled live, ${noted} only noted.`,
  ];
}
