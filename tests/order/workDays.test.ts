import { describe, expect, test } from 'vitest';
import { emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import { isWorkDay, lastWorkDay, shopDayUpTo, type WorkDays, workDayUpTo } from '../../src/order/workDays';
import { type DayNumber, dayOf, isoText, weekdayText } from '../../src/takeoff/text/calendar';
import { bareTakeoff, plainEntry } from '../support/bareTakeoff';
import { demoJob } from '../support/demoHouse';
import { lineNamed, orderFor, PLAIN_TERMS, plainRoom } from '../support/plainOrder';
import { demoOrder } from '../support/plannedDemo';

const dayText = (day: DayNumber) => `${weekdayText(day)} ${isoText(day)}`;
const dayNamed = (text: string) => dayOf(text) as number;
const EVERY: readonly WorkDays[] = ['Monday to Friday', 'Saturdays too', 'every day'];

describe('work days', () => {
  // 1 January 2000 was a Saturday, 29 February 2000 a Tuesday (almanac); 7 December 2026 is a Monday.
  test.each([
    ['2000-01-01', [false, true, true]],
    ['2000-01-02', [false, false, true]],
    ['2000-02-29', [true, true, true]],
    ['1969-12-28', [false, false, true]],
  ])('%s by Monday to Friday, Saturdays too, every day: %j', (text, answers) => {
    expect(EVERY.map((workDays) => isWorkDay(dayNamed(text), workDays))).toEqual(answers);
  });

  test.each([
    ['Monday to Friday', 'Fri 2026-12-04', 'Fri 2026-12-04'],
    ['Saturdays too', 'Sat 2026-12-05', 'Sat 2026-12-05'],
    ['every day', 'Sun 2026-12-06', 'Sat 2026-12-05'],
  ] as const)('%s: before Monday 7 December 2026 work is on %s, delivery on %s', (workDays, work, shop) => {
    expect(dayText(workDayUpTo(dayNamed('2026-12-06'), workDays))).toBe(work);
    expect(dayText(shopDayUpTo(dayNamed('2026-12-06'), workDays))).toBe(shop);
  });

  test.each([
    ['2026-12-07', 5, 'Monday to Friday', 'Fri 2026-12-11'],
    ['2026-12-07', 6, 'Monday to Friday', 'Mon 2026-12-14'],
    ['2026-12-07', 6, 'Saturdays too', 'Sat 2026-12-12'],
    ['2026-12-07', 8, 'every day', 'Mon 2026-12-14'],
    ['2026-12-10', 3, 'Monday to Friday', 'Mon 2026-12-14'],
    // A start on a day off was named by the person, and counts.
    ['2026-12-05', 1, 'Monday to Friday', 'Sat 2026-12-05'],
    ['2026-12-05', 2, 'Monday to Friday', 'Mon 2026-12-07'],
    ['2026-12-05', 6, 'Monday to Friday', 'Fri 2026-12-11'],
  ] as const)('work from %s for %i days, %s: done on %s', (start, count, workDays, last) => {
    expect(dayText(lastWorkDay(dayNamed(start), count, workDays))).toBe(last);
  });

  test('whole weeks at once end where one day after another does', () => {
    const slowly = (start: number, count: number, workDays: WorkDays) => {
      let day = start;
      for (let left = count; left > 1; left -= isWorkDay(day, workDays) ? 1 : 0) day++;
      return day;
    };
    for (const workDays of EVERY) {
      for (let start = 0; start < 7; start++) {
        for (let count = 1; count < 25; count++) {
          expect(lastWorkDay(start, count, workDays)).toBe(slowly(start, count, workDays));
        }
      }
    }
  });
});

describe('the dates of a job', () => {
  const scheduleOf = (changes: Partial<HouseEntry['schedule']>) => ({ ...demoJob.schedule, ...changes });

  test('weekends are left out unless they are said to be worked on', () => {
    // Thursday 10 December 2026: four days of work are Thursday, Friday, Monday, Tuesday.
    const schedule = scheduleOf({ startDate: '2026-12-10' });
    const { timing } = demoOrder({ schedule });
    expect([timing.workDays, dayText(timing.finish as number)]).toEqual([4, 'Tue 2026-12-15']);
    const everyDay = demoOrder({ schedule: { ...schedule, workDays: 'every day' } });
    expect(dayText(everyDay.timing.finish as number)).toBe('Sun 2026-12-13');
  });

  test('boxes that would come on a Sunday come on the day of work before', () => {
    // Wednesday 9 December less 72 hours is Sunday the 6th.
    const { timing } = demoOrder({ schedule: scheduleOf({ startDate: '2026-12-09' }) });
    expect(dayText(timing.delivered as number)).toBe('Fri 2026-12-04');
    const saturdays = demoOrder({ schedule: scheduleOf({ startDate: '2026-12-09', workDays: 'Saturdays too' }) });
    expect(dayText(saturdays.timing.delivered as number)).toBe('Sat 2026-12-05');
  });

  test('nothing of the days before the start is set on a day off', () => {
    for (let day = 1; day <= 14; day++) {
      const startDate = `2026-12-${`0${day}`.slice(-2)}`;
      const { days } = demoOrder({ schedule: scheduleOf({ startDate }) });
      const before = days.filter(({ offset }) => offset < 0);
      expect(before.length).toBeGreaterThan(3);
      expect(before.filter(({ day: own }) => /^S(at|un)/.test(weekdayText(own as number)))).toEqual([]);
    }
  });

  test('a start on a day off is told, and keeps its date', () => {
    const order = demoOrder({ schedule: scheduleOf({ startDate: '2026-12-05' }) });
    expect(order.notes).toContain('The start, Sat, Dec 5, 2026, is not one of the work days entered.');
    const inIreland = demoOrder({ schedule: scheduleOf({ startDate: '2026-12-05' }) }, 'en_IE');
    expect(inIreland.notes).toContain('The start, Sat 5 Dec 2026, is not one of the work days entered.');
    const quoted = (quoteDate: string, validUntil: string) =>
      demoOrder({
        schedule: scheduleOf({ startDate: '2026-12-07' }),
        homeowner: { ...demoJob.homeowner, quoteDate, validUntil },
      }).notes;
    expect(quoted('2026-12-08', '2026-12-07')).toEqual([
      'The price is valid until Mon, Dec 7, 2026, before the day of the quote.',
    ]);
    expect(quoted('2026-12-07', '2026-12-07')).toEqual([]);
    expect(dayText(order.timing.start as number)).toBe('Sat 2026-12-05');
  });
});

describe('hours', () => {
  const BLANK = emptyHouse('us');
  const all = {
    perRoom: 30,
    perRow: '',
    perCut: '',
    perNotch: '',
    perDoorway: '',
    perTrim: 5,
    perDoor: '',
    perUnderlay: 20,
    perTearOut: 60,
  };
  const job = {
    trims: [demoJob.trims[1]],
    underlay: { ...BLANK.underlay, width: 4, length: 50 },
    floors: [PLAIN_TERMS],
    site: { ...BLANK.site, tearOut: ['den'] },
    schedule: { ...BLANK.schedule, hoursPerDay: 8 },
  };
  const hoursOf = (pace: HouseEntry['pace'], labour: HouseEntry['labour'] = []) =>
    orderFor([plainRoom(60)], { ...job, pace, labour });

  test('count trim, underlay and the old floor: 30 + 4 x 5 + 1.2 x 20 + 1.2 x 60 = 146 min = 2.43 h', () => {
    expect(hoursOf(all).hours[0]).toMatchObject({ trims: 4, layers: 120, tearOut: 120, hours: 2.43, missing: [] });
    expect(hoursOf(all).timing.workDays).toBe(1);
  });

  test('a blank pace that is needed is missing, one that is not is not', () => {
    const order = hoursOf({ ...all, perTrim: '', perTearOut: '' });
    expect(order.hours[0]).toMatchObject({
      hours: null,
      missing: ['a length of trim', 'old floor out, 100 sq ft (10 m2)'],
    });
    expect(order.notes.join(' ')).toContain('No hours are estimated: minutes for a length of trim, old floor out');
    expect(order.timing.workDays).toBeNull();
  });

  test('work paid by the hour names it among what is missing', () => {
    const order = hoursOf({ ...all, perUnderlay: '' }, [{ work: 'Laying', by: 'hour', rate: 40 }]);
    expect(order.missing).toContain('Laying: minutes for underlay, 100 sq ft (10 m2) of a layer are not entered');
  });

  // The old floor comes out of the den only: the hall's hours are known, those of the job are not.
  test('hours that are missing in one room of two are missing in the job', () => {
    const rooms = [plainRoom(60), bareTakeoff(plainEntry('Hall', 9, 5), { planks: 20 })];
    const labour = [{ work: 'Laying', by: 'hour', rate: 40 } as const];
    const order = orderFor(rooms, { ...job, pace: { ...all, perTearOut: '' }, labour });
    expect(order.hours.map(({ hours }) => hours === null)).toEqual([true, false]);
    expect(lineNamed(order, 'Laying')).toMatchObject({ basis: null, total: null });
    expect(order.missing).toContain('Laying: minutes for old floor out, 100 sq ft (10 m2) are not entered');
    expect(order.timing.workDays).toBeNull();
  });

  test('a room that is not in the order is told where its old floor comes out', () => {
    const order = orderFor([plainRoom(60)], { site: { ...BLANK.site, tearOut: ['Attic'] } });
    expect(order.notes[0]).toContain('Attic');
  });
});
