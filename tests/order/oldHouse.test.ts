import { describe, expect, test } from 'vitest';
import { blankItem, emptyHouse, type HouseEntry, type TestResult } from '../../src/order/houseEntry';
import { bareTakeoff, doorwayIn, plainEntry } from '../support/bareTakeoff';
import { beforeOf, orderFor, plainRoom } from '../support/plainOrder';

const BLANK = emptyHouse('us');
const BASEBOARD = { ...blankItem('trims'), name: 'Baseboard', buy: 'put back' } as const;
const houseOf = (builtYear: number | '', site: Partial<HouseEntry['site']> = {}) => ({
  site: { ...BLANK.site, builtYear, ...site },
});

/** A den of 12 by 10 ft with a doorway of 3 ft, whose door hangs 1/4 in above the subfloor: planks of 1/2 in. */
const den = bareTakeoff(plainEntry('Den', 12, 10, { doorways: [doorwayIn(1, 2, 3)] }), { planks: 60 });
const DOOR = { ...blankItem('doorways'), room: 'Den', doorway: 1, doorBottom: '1/4"' };

describe('old floors (29 CFR 1926.1101(k)(1): presumed up to 1980, unless tested)', () => {
  test.each([
    [1980, '', 'stop'],
    [1980, 'to be tested', 'stop'],
    [1980, 'found', 'stop'],
    [1980, 'none found', 'do'],
  ] as const)('a house of %i, test %j: %s', (year, asbestosTest, state) => {
    const lines = beforeOf(orderFor([plainRoom(60)], houseOf(year, { asbestosTest })), 'Asbestos');
    expect(lines.map((line) => line.split(':')[0])).toEqual([state]);
  });

  test('a house of 1981 has no line, a house of unknown year asks', () => {
    expect(beforeOf(orderFor([plainRoom(60)], houseOf(1981)), 'Asbestos')).toEqual([]);
    expect(beforeOf(orderFor([plainRoom(60)], houseOf('')), 'Old floors')).toHaveLength(1);
  });

  test('tests of a house of unknown year clear it', () => {
    const tested = houseOf('', { asbestosTest: 'none found', leadTest: 'none found' });
    const order = orderFor([plainRoom(60)], { ...tested, trims: [BASEBOARD] });
    expect(order.before.filter(({ state, subject }) => state !== 'do' && /Old|Asb|Lead/.test(subject))).toEqual([]);
  });
});

describe('lead (40 CFR 745.83: 6 sq ft of painted surface in a room within 30 days, all work counted)', () => {
  const leadOf = (changes: Partial<HouseEntry>, rooms = [den]) => beforeOf(orderFor(rooms, changes), 'Lead paint');

  test('44 ft of baseboard 3 1/2 in high are 12.8 sq ft: over 6', () => {
    const trims = [{ ...BASEBOARD, height: '3 1/2"' }];
    const [line] = leadOf({ ...houseOf(1950), trims }, [plainRoom(60)]);
    expect(line).toMatch(/^stop: Den: .*12\.8 sq ft/);
  });

  test.each([
    [1978, 0],
    [1977, 1],
  ])('housing of %i: %i lines', (year, count) => {
    expect(leadOf({ ...houseOf(year), trims: [{ ...BASEBOARD, height: 1 }] }, [plainRoom(60)])).toHaveLength(count);
  });

  // By hand: 41 ft of baseboard 1 1/2 in high are 5.125 sq ft, a shoe of 3/4 in 2.5625 sq ft: neither is over 6 alone.
  test('two trims that are each under 6 sq ft are over it together', () => {
    const trims = [
      { ...BASEBOARD, height: '1 1/2"' },
      { ...BASEBOARD, name: 'Shoe', height: '3/4"' },
    ];
    const site = { casingWidth: 0 };
    expect(leadOf({ ...houseOf(1950, site), trims: trims.slice(0, 1) })[0]).toMatch(/^do: .*5\.1 sq ft/);
    expect(leadOf({ ...houseOf(1950, site), trims })[0]).toMatch(/^stop: .*7\.7 sq ft/);
  });

  // EPA, frequent question 23002-14294: 1 in off a door 36 in wide is 36 square inches, whatever the saw's cut; casings
  // likewise. By hand: two casings of 6 in, undercut at 1/2 in, are 6 sq in; 5/8 in off a door of 36 in 22.5; with
  // 5.125 sq ft of baseboard 766.5 sq in, 5.3 sq ft.
  test('casings and shortened doors count', () => {
    const trims = [{ ...BASEBOARD, height: '1 1/2"' }];
    const [line] = leadOf({ ...houseOf(1950, { casingWidth: 6 }), trims, doorways: [DOOR] });
    expect(line).toMatch(/^do: Den: baseboard, 2 casings to undercut, 1 door to shorten disturb 5\.3 sq ft/);
    const [wider] = leadOf({ ...houseOf(1950, { casingWidth: '100"' }), trims, doorways: [DOOR] });
    // Two of 100 by 1/2 in are 100 sq in: 860.5 in all, 6 sq ft less a little; over it with 104 in.
    expect(wider).toMatch(/^do: .*6 sq ft/);
    expect(leadOf({ ...houseOf(1950, { casingWidth: '104"' }), trims, doorways: [DOOR] })[0]).toMatch(/^stop/);
  });

  test('heights and widths that are not known are asked for, and the rest is counted', () => {
    const [line] = leadOf({ ...houseOf(1950), trims: [BASEBOARD], doorways: [DOOR] });
    expect(line).toMatch(/^ask: .*at least 0\.2 sq ft.*the height of the old trim.*the painted width of a door casing/);
  });

  test('a room for which no trim is entered asks which comes off', () => {
    expect(leadOf(houseOf(1950), [plainRoom(60)])[0]).toMatch(/^ask: .*which old trim comes off/);
    expect(leadOf(houseOf(1978), [plainRoom(60)])).toEqual([]);
  });

  test('new trim for which nothing comes off disturbs nothing', () => {
    const trims = [{ ...blankItem('trims'), name: 'Shoe', stockLength: 8, height: 0, price: 1 } as const];
    expect(leadOf({ ...houseOf(1950), trims }, [plainRoom(60)])).toEqual([]);
    const beside = leadOf({ ...houseOf(1950), trims: [...trims, { ...BASEBOARD, height: 3 }] }, [plainRoom(60)]);
    expect(beside).toEqual([expect.stringMatching(/^stop: Den: baseboard disturb/)]);
    const unknown = [{ ...trims[0], height: '' }];
    expect(leadOf({ ...houseOf(1950), trims: unknown }, [plainRoom(60)])[0]).toMatch(/^ask: .*0 where none does/);
  });

  test('a test that found none clears a stop; one that found some does not', () => {
    const trims = [{ ...BASEBOARD, height: '3 1/2"' }];
    const tested = (leadTest: TestResult) => leadOf({ ...houseOf(1950, { leadTest }), trims }, [plainRoom(60)])[0];
    expect(tested('none found')).toMatch(/^do/);
    expect(tested('found')).toMatch(/^stop/);
  });

  test('casings without paint, and nothing else, are no line', () => {
    const trims = [{ ...BASEBOARD, height: 0 }];
    expect(leadOf({ ...houseOf(1950, { casingWidth: 0 }), trims })).toEqual([]);
  });

  test('each room has its own 6 sq ft', () => {
    const hall = bareTakeoff(plainEntry('Hall', 6, 4), { planks: 12 });
    const trims = [{ ...BASEBOARD, height: 3 }];
    const lines = leadOf({ ...houseOf(1950), trims }, [plainRoom(60), hall]);
    // 44 ft and 20 ft of 1/4 ft: 11 and 5 sq ft.
    expect(lines.map((line) => line.split(':')[0])).toEqual(['stop', 'do']);
  });
});

describe('a metric house', () => {
  const entry = { ...plainEntry('Den', '4 m', '3 m'), units: 'metric' as const };
  const room = bareTakeoff(entry, { planks: 60 });
  const orderOf = (builtYear: number, site: Partial<HouseEntry['site']> = {}) =>
    orderFor([room], {
      units: 'metric',
      trims: [{ ...BASEBOARD, height: 90 }],
      site: { ...emptyHouse('metric').site, builtYear, ...site },
    });

  test('is told its square metres and no American limit: 14 m of 90 mm are 1.26 m2', () => {
    const texts = orderOf(1950).before.map(({ text }) => text);
    expect(texts.join(' ')).toContain('1.26 m2');
    expect(texts.join(' ')).not.toMatch(/sq ft|CFR|1978|1980|certified/);
  });

  // Directive 1999/77/EC: asbestos ended by 1 January 2005.
  test.each([
    [1995, '', ['stop']],
    [1995, 'none found', ['do']],
    [2005, '', []],
  ] as const)('of %i, test %j: %j', (year, asbestosTest, states) => {
    const lines = beforeOf(orderOf(year, { asbestosTest }), 'Asbestos');
    expect(lines.map((line) => line.split(':')[0])).toEqual(states);
  });
});
