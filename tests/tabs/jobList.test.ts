import { describe, expect, test } from 'vitest';
import { jobListBlock, tickedTasks } from '../../src/tabs/jobList';
import { blockTexts, blockValues } from '../support/blockValues';
import { demoJob } from '../support/demoHouse';
import { demoOrder } from '../support/plannedDemo';

const order = demoOrder();
const block = jobListBlock(order, new Set(), 'en_US');

describe('the job list', () => {
  test('every day’s task has a box to tick, and ticks are found again', () => {
    const boxes = block.cells.filter((row) => row[2].value.kind === 'tick');
    expect(boxes).toHaveLength(order.days.length);
    const done = new Set([order.days[3].text]);
    expect(tickedTasks(blockValues(jobListBlock(order, done, 'en_US')))).toEqual(done);
  });

  test('days are written as the country of the house writes them, or counted where no start is entered', () => {
    // By hand: 13 days before Monday 7 December 2026.
    const firstDay = (locale: string) => blockTexts(jobListBlock(order, new Set(), locale))[3][0];
    expect(firstDay('en_US')).toBe('Tue, Nov 24, 2026');
    expect(firstDay('de_DE')).toBe('Tue 24.11.2026');
    const open = demoOrder({ schedule: { ...demoJob.schedule, startDate: '' } });
    const whens = blockTexts(jobListBlock(open, new Set(), 'en_US')).map(([when]) => when);
    expect(whens).toEqual(expect.arrayContaining(['3 days before', 'day before', 'first day']));
  });

  test('limits that are passed stand out: the house of 1971, the stair', () => {
    const marked = blockValues(block).filter((row) => row[2] === 'STOP' || row[2] === 'CHECK');
    expect(marked.map((row) => String(row[0]))).toContain('Asbestos');
    expect(marked.map((row) => String(row[0]))).toContain('Study, Stair to the loft');
  });

  test('every piece of trim is listed at a stick, once', () => {
    const lines = blockTexts(block).map((row) => row.join(' '));
    for (const { cuts } of order.sticks) {
      expect(cuts.sticks.flat().length).toBe(cuts.pieces.length);
      const labels = new Set(cuts.pieces.map((piece) => piece.label));
      for (const label of labels) expect(lines.some((line) => line.includes(label))).toBe(true);
    }
  });

  test('has no price on it', () => {
    const numbers = blockTexts(block).flat().join(' ');
    for (const line of order.lines) if (line.price !== null) expect(numbers).not.toContain(line.price.toFixed(2));
  });
});
