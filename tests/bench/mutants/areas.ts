/** What is changed, area by area, and the tests that hold it. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../../../src/build.mjs';

/** Files that are changed, folders among them, and test files, folders among them. */
export interface Area {
  readonly name: string;
  readonly files: readonly string[];
  readonly tests: readonly string[];
}

const AREAS: readonly Area[] = [
  {
    name: 'geometry',
    files: ['src/geometry'],
    tests: ['tests/geometry', 'tests/room', 'tests/layout/pieces.test.ts', 'tests/layout/square.test.ts'],
  },
  {
    name: 'inset',
    files: ['src/geometry/inset.ts', 'src/geometry/inwards.ts'],
    tests: ['tests/geometry', 'tests/room'],
  },
  { name: 'room', files: ['src/room'], tests: ['tests/room', 'tests/takeoff/reading', 'tests/rooms.test.ts'] },
  {
    name: 'layout',
    files: ['src/layout'],
    tests: ['tests/layout', 'tests/takeoff/planning', 'tests/takeoff/telling', 'tests/rooms.test.ts'],
  },
  {
    name: 'pieces',
    files: [
      ...[
        'beside',
        'bends',
        'bentLine',
        'lengthwise',
        'marking',
        'notches',
        'pieces',
        'prongs',
        'round',
        'slants',
        'square',
      ].map((name) => `src/layout/${name}.ts`),
    ],
    tests: ['tests/layout', 'tests/takeoff/telling', 'tests/sheet/wallFunction.test.ts', 'tests/rooms.test.ts'],
  },
  {
    name: 'rows',
    files: ['src/layout/rows.ts', 'src/layout/rips.ts', 'src/layout/narrowest.ts'],
    tests: ['tests/layout', 'tests/sheet/rowFunctions.test.ts', 'tests/rooms.test.ts'],
  },
  {
    name: 'laws',
    files: ['src/cutting/judge'],
    tests: ['tests/cutting/plan', 'tests/cutting/judge', 'tests/cutting/onward.test.ts'],
  },
  {
    name: 'ledger',
    files: ['src/cutting/plan'],
    tests: [
      'tests/cutting/plan',
      'tests/cutting/search.test.ts',
      'tests/cutting/exhaustive.test.ts',
      'tests/takeoff/telling',
    ],
  },
  {
    name: 'bound',
    files: ['src/cutting/bound'],
    tests: ['tests/cutting/bound', 'tests/cutting/exhaustive.test.ts', 'tests/cutting/search.test.ts'],
  },
  {
    name: 'search',
    files: ['src/cutting/search', 'src/cutting/search.ts', 'src/cutting/runs', 'src/cutting/exact', 'src/cutting/trim'],
    tests: ['tests/cutting', 'tests/published/cuttingStock.test.ts'],
  },
  {
    name: 'follow',
    files: ['src/cutting/follow', 'src/cutting/goals'],
    tests: [
      ...['tests/cutting/follow', 'tests/cutting/follow.test.ts', 'tests/cutting/exhaustive.test.ts'],
      'tests/cutting/search.test.ts',
    ],
  },
  {
    name: 'onward',
    files: ['src/cutting/onward'],
    tests: [
      ...['tests/cutting/onward.test.ts', 'tests/cutting/onward', 'tests/cutting/inParts.test.ts'],
      ...['tests/sheet/onwardFunction.test.ts', 'tests/tabs/planOn.test.ts', 'tests/takeoff/planning/planOn.test.ts'],
    ],
  },
  {
    name: 'plan on',
    files: [
      ...[
        ...['planOn', 'asLaid', 'asYouLay', 'begunRows', 'bestRest', 'followed', 'inHand', 'listMatches', 'listedPlan'],
        ...['listedUnits', 'sides', 'waitingStrips'],
      ].map((name) => `src/takeoff/planning/${name}.ts`),
    ],
    tests: [
      ...['tests/takeoff/planning/planOn.test.ts', 'tests/tabs/planOn.test.ts', 'tests/tabs/planOnTogether.test.ts'],
      'tests/tabs/asYouLay.test.ts',
    ],
  },
  {
    name: 'lists',
    files: [
      ...['asLaid', 'asYouLay', 'keptMarks', 'laidWork', 'planOnTabs', 'sharedLists'].map(
        (name) => `src/tabs/${name}.ts`,
      ),
    ],
    tests: [
      ...['asYouLay', 'cutList', 'laidWork', 'planOn', 'planOnTogether'].map((name) => `tests/tabs/${name}.test.ts`),
    ],
  },
  {
    name: 'telling',
    files: ['src/takeoff/telling'],
    tests: [
      ...['tests/takeoff', 'tests/tabs/cutList.test.ts', 'tests/tabs/planOn.test.ts', 'tests/tabs/asYouLay.test.ts'],
      ...['tests/layout/marking.test.ts', 'tests/layout/markingRebuilt.test.ts', 'tests/rooms.test.ts'],
    ],
  },
  { name: 'takeoff', files: ['src/takeoff'], tests: ['tests/takeoff', 'tests/rooms.test.ts', 'tests/published'] },
  {
    name: 'lengths',
    files: ['src/takeoff/text/lengthText.ts', 'src/takeoff/text/numberText.ts', 'src/geometry/length.ts'],
    tests: ['tests/takeoff/text', 'tests/sheet/slips.test.ts', 'tests/layout/rows.test.ts'],
  },
  {
    name: 'money',
    files: ['src/order/money.ts', 'src/order/boxes.ts', 'src/order/roomPrices.ts'],
    tests: ['tests/order', 'tests/published'],
  },
  {
    name: 'order',
    files: ['src/order'],
    tests: [
      ...['tests/order', 'tests/published', 'tests/tabs/order.test.ts', 'tests/tabs/homeowner.test.ts'],
      'tests/tabs/jobTabs.test.ts',
    ],
  },
  {
    name: 'order tab',
    files: ['src/tabs/order.ts', 'src/tabs/orderFormulas.ts', 'src/tabs/orderRead.ts'],
    tests: ['tests/tabs/order.test.ts', 'tests/tabs/orderCells.test.ts', 'tests/tabs/jobTabs.test.ts'],
  },
  { name: 'tabs', files: ['src/tabs'], tests: ['tests/tabs'] },
  {
    name: 'functions',
    files: [
      ...['areaFunctions', 'compareFunction', 'cutFunctions', 'cutTable', 'fitFunction', 'lengthFunctions'],
      ...[
        'offcutTable',
        'onwardFunction',
        'onwardTable',
        'orderFunctions',
        'plannedRuns',
        'rowFunctions',
        'rulesRange',
      ],
      ...['staggerVerdicts', 'wallFunction', 'wallsRange'],
    ].map((name) => `src/sheet/${name}.ts`),
    tests: [
      ...['areaFunctions', 'arguments', 'compareFunction', 'cutFunctions', 'everyFunction', 'fitFunction'],
      ...['lengthFunctions', 'onwardFunction', 'rowFunctions', 'slips', 'typedDecimals', 'wallFunction'],
    ].map((name) => `tests/sheet/${name}.test.ts`),
  },
  {
    name: 'arguments',
    files: ['src/sheet/arguments.ts', 'src/sheet/cells.ts'],
    tests: [
      'arguments',
      'cells',
      'everyFunction',
      'areaFunctions',
      'lengthFunctions',
      'rowFunctions',
      'slips',
      'typedDecimals',
    ].map((name) => `tests/sheet/${name}.test.ts`),
  },
];

/** @param named names with commas between, '' for all. @throws Error with all names when one is not known */
export function areasNamed(named: string): readonly Area[] {
  if (named === '') return AREAS;
  return named.split(',').map((name) => {
    const known = AREAS.find((area) => area.name === name.trim());
    if (known) return known;
    throw new Error(`--area: there is no "${name}". There are: ${AREAS.map((area) => area.name).join(', ')}.`);
  });
}

/** Source files of a folder and the folders in it, or the one file. */
export function sourcesAt(path: string): readonly string[] {
  if (!statSync(join(projectFolder, path)).isDirectory()) return [path];
  return readdirSync(join(projectFolder, path), { recursive: true, encoding: 'utf8' })
    .map((name) => `${path}/${name.replaceAll('\\', '/')}`)
    .filter((name) => name.endsWith('.ts'));
}

/** Test files of a folder that need nothing of vitest but its tests: none of its clocks and doubles. */
export function testsAt(path: string): readonly string[] {
  return sourcesAt(path).filter(
    (file) =>
      file.endsWith('.test.ts') &&
      !/import \{[^}]*\bvi\b[^}]*\} from 'vitest'/.test(readFileSync(join(projectFolder, file), 'utf8')),
  );
}
