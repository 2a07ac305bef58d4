import { describe, expect, test } from 'vitest';
import { jobListBlock, tickedTasks } from '../../src/tabs/jobList';
import { blockTexts, blockValues } from '../support/blockValues';
import { demoOrder } from '../support/plannedDemo';

const order = demoOrder();
const block = jobListBlock(order, new Set());

describe('the job list', () => {
  test('every day’s task has a box to tick, and ticks are found again', () => {
    const boxes = block.cells.filter((row) => row[2].value.kind === 'tick');
    expect(boxes).toHaveLength(order.days.length);
    const done = new Set([order.days[3].text]);
    expect(tickedTasks(blockValues(jobListBlock(order, done)))).toEqual(done);
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
