/** What can hurt the person who cuts and lays, in the order in which they meet it. */

export const CAUTIONS: readonly string[] = [
  "The product's own instructions and your local codes come before anything in this list.",
  // Source: 29 CFR 1910.213(c) for hand-fed ripsaws: hood guard, spreader, anti-kickback; 29 CFR 1926.300(b)(1).
  'Table saw: leave the guard, the riving knife and the anti-kickback fingers on. Push narrow rips with a push stick. Unplug before you change a blade.',
  'Wear eye and hearing protection at every saw. Clamp short pieces; do not hold them by hand.',
  // Source: 29 CFR 1910.1000 Table Z-1 (dust), 29 CFR 1926.1153 (silica from concrete).
  'Cut outside, or with an extractor and a dust mask: dust of wood and boards harms the lungs. Ground concrete gives off silica, which is worse.',
  // Source: 29 CFR 1926.1101: flooring put in no later than 1980 is presumed to contain asbestos unless tested.
  'Old sheet or tile floors, their backing and their black glue may hold asbestos, above all if laid in 1980 or before. Have them tested; until then do not sand, saw, dry-scrape or pull them up.',
  // Source: 40 CFR 745 Subpart E: housing built before 1978; baseboards taken off count as disturbed paint.
  'Paint in a house built before 1978 may hold lead, on baseboards and door frames too. Test before you take them off, sand or cut them. Outside the US other years apply: ask.',
  // Common practice. Knees: NIOSH HETA 98-0308-2785 (2000) on floor layers.
  'Boxes are heavy: carry one at a time, or two people together. Wear knee pads, and get up often.',
];
