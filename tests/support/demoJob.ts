import type { CutJob, JobRow } from '../../src/cutting/job';

const inches = (value: number) => value * 16;

/**
 * The demo's living room as a cutting job, worked out by hand in inches, then sixteenths. Over all 18 ft by 17 ft with
 * the closet. Across the rows: 204 less two gaps of 3/8 is 203.25; 27 planks of 7 1/2 leave 0.75, under the rip of 2,
 * so 26 full rows and two of (203.25 - 195) / 2 = 4 1/8. From the near side: row k > 1 starts at 4.125 + 7.5 (k - 2).
 * The closet is 4' 9" wide and 2' 6" deep: rows 1 to 4 lie in it, 57 less 0.75 long, from 4' 3" and a gap. Row 5 reaches
 * the living room (26.625 to 34.125, over 30): 12 ft less 0.75 from there. Row 13 reaches the wide part (86.625 to
 * 94.125, over 90): 18 ft less 0.75 from there on.
 */
export function demoJob(): CutJob {
  const row = (x: number, length: number, width = 7.5): JobRow => ({
    room: 0,
    width: inches(width),
    runs: [{ x: inches(x), length: inches(length) }],
  });
  const closet = [row(51.375, 56.25, 4.125), ...Array.from({ length: 3 }, () => row(51.375, 56.25))];
  const narrow = Array.from({ length: 8 }, () => row(0.375, 143.25));
  const wide = [...Array.from({ length: 15 }, () => row(0.375, 215.25)), row(0.375, 215.25, 4.125)];
  return {
    plankLength: inches(47.25),
    plankWidth: inches(7.5),
    kerf: inches(1 / 8),
    minPiece: inches(8),
    minStagger: inches(8),
    alignedDistance: inches(2),
    rows: [...closet, ...narrow, ...wide],
    ripPairs: [],
  };
}
