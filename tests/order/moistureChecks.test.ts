import { describe, expect, test } from 'vitest';
import { ticksOfInches } from '../../src/geometry/length';
import { emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import type { ProductKind, Typed } from '../../src/takeoff/entry';
import { bareTakeoff, plainEntry } from '../support/bareTakeoff';
import { beforeOf, orderFor, PLAIN_TERMS, plainRoom, roomOfKind } from '../support/plainOrder';

const BLANK = emptyHouse('us');

describe('concrete is judged by the product’s own limit', () => {
  const lineOf = (subfloorMoisture: Typed, subfloorLimit: Typed, units: 'us' | 'metric' = 'us') =>
    beforeOf(
      orderFor([plainRoom(60)], {
        units,
        site: { ...emptyHouse(units).site, subfloor: 'concrete', subfloorMoisture },
        floors: [{ ...PLAIN_TERMS, subfloorLimit }],
      }),
      'Moisture',
    )[0];

  // ASTM F2170 has no limit of its own: makers give 75 to 90 % (a maker of meters), a urethane adhesive's sheet 82 %.
  test.each([
    [75, 75, 'do'],
    [76, 75, 'stop'],
    [76, 82, 'do'],
    [83, 82, 'stop'],
    ['', 82, 'ask'],
    [70, '', 'ask'],
    [95, '', 'ask'],
  ])('measured %j %%, allowed %j %%: %s', (measured, limit, state) => {
    expect(lineOf(measured, limit)).toMatch(new RegExp(`^${state}: `));
  });

  // Germany, carbide method: 1.8 % for heated cement screed under parquet, 0.5 % for calcium sulphate (a screed testing
  // firm's table).
  test.each([
    ['1.8', '1.8%', 'do'],
    ['2.1', '1.8%', 'stop'],
    ['0.4%', '0.5%', 'do'],
    ['0.6%', '0.5%', 'stop'],
    // Relative humidity held against per cent by weight.
    [70, '1.8%', 'ask'],
    ['1.5%', 75, 'ask'],
  ])('in a metric house %j against %j: %s', (measured, limit, state) => {
    expect(lineOf(measured, limit, 'metric')).toMatch(new RegExp(`^${state}: `));
    expect(lineOf(measured, limit, 'metric')).not.toContain('ASTM');
  });
});

describe('a wood subfloor', () => {
  const lineOf = (units: 'us' | 'metric', subfloorLimit: Typed) =>
    beforeOf(
      orderFor([roomOfKind('solid wood')], {
        units,
        site: { ...emptyHouse(units).site, subfloor: 'wood', subfloorMoisture: 11 },
        floors: [{ ...PLAIN_TERMS, moisture: 8, subfloorLimit }],
      }),
      'Moisture',
    )[0];

  test('in a metric house is held against what the product says, never against American points', () => {
    expect(lineOf('us', '')).toMatch(/^stop: .*3 points apart \(at most 2; subfloor at most 12 %\)/);
    expect(lineOf('metric', '')).toMatch(/^ask: .*What its instructions allow is not entered/);
    expect(lineOf('metric', 12)).toMatch(/^do: .*\(subfloor at most 12 %\)/);
    expect(lineOf('metric', 10)).toMatch(/^stop/);
  });

  test('a limit of the product’s own comes before 12 %', () => {
    expect(lineOf('us', 10)).toContain('subfloor at most 10 %');
  });
});

// The standard is American; a carbide test is what the German table among the sources goes by.
test.each([
  ['us', /probes in the slab \(ASTM F2170\)/],
  ['metric', /\(relative humidity, or carbide\)/],
] as const)('concrete is measured as the country does: %s', (units, words) => {
  for (const subfloorLimit of ['', 75]) {
    const floors = [{ ...PLAIN_TERMS, subfloorLimit }];
    const order = orderFor([plainRoom(60)], { units, floors, site: { ...BLANK.site, subfloor: 'concrete' } });
    expect(beforeOf(order, 'Moisture')).toEqual([expect.stringMatching(words)]);
  }
});

describe('movement', () => {
  const site = { ...BLANK.site, temperature: 70, humidityLow: 35, humidityHigh: 60 };
  const metricPlank = { ...plainEntry('', 1, 1).product, kind: 'solid wood', plankWidth: '152.4 mm' } as const;
  const lineOf = (kind: ProductKind, species: Typed, more: Partial<HouseEntry> = {}) => {
    const bare = roomOfKind(kind);
    const rows = [{ rowNumber: 1, width: ticksOfInches(60) }] as unknown as typeof bare.rows;
    const room = { ...bare, rows };
    return beforeOf(orderFor([room], { site, floors: [{ ...PLAIN_TERMS, species }], ...more }), 'Movement');
  };

  // 6.9 and 11.0 % by FPL-RN-0268; Wood Handbook, equation 13-2: 6 x .00274 x 4.1 = 0.067 in, 60 in ten times that, to
  // the rounding of the two moistures.
  test('solid ash 6 in wide between 35 and 60 % humidity at 70 F moves what the Wood Handbook’s equation says', () => {
    expect(lineOf('solid wood', 'white ash')).toEqual([
      expect.stringMatching(
        /^do: Den: 6\.9 to 11 % moisture over the year\. A plank's width changes by 0\.06[678] in, .* 0\.6[678]/,
      ),
    ]);
  });

  // The same between 35 and 60 % at 21 C (70 F): 152.4 mm x .00274 x 4.1 = 1.7 mm, rows of 1524 mm ten times that.
  test('in a metric house in tenths of a millimetre', () => {
    const metric = { ...site, temperature: 21 };
    const bare = bareTakeoff(plainEntry('Den', 4, 3, { units: 'metric', product: metricPlank }), { planks: 60 });
    const room = { ...bare, rows: [{ rowNumber: 1, width: ticksOfInches(60) }] as unknown as typeof bare.rows };
    const floors = [{ ...PLAIN_TERMS, species: 'white ash' }];
    expect(beforeOf(orderFor([room], { units: 'metric', site: metric, floors }), 'Movement')).toEqual([
      expect.stringMatching(/A plank's width changes by 1\.7 mm, .* 1[67]\.\d mm/),
    ]);
  });

  test('engineered planks are not told the figure of solid wood, by name or by number', () => {
    for (const species of ['white ash', 'white ash, quarter-sawn', 0.00274]) {
      expect(lineOf('engineered wood', species)[0]).toMatch(/^ask: .*type the coefficient of their maker/);
    }
    // A maker's coefficient is reckoned with: 6 x .001 x 4.1 = 0.025.
    expect(lineOf('engineered wood', 0.001)[0]).toMatch(/^do: .*A plank's width changes by 0\.02[45] in/);
  });

  test.each(['laminate', 'rigid vinyl'] as const)('%s has no coefficient of wood', (kind) => {
    expect(lineOf(kind, 'white ash')[0]).toMatch(/^ask: .*coefficients of wood do not apply/);
    expect(lineOf(kind, '')).toEqual([]);
  });
});
