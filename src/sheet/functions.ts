// Placeholder, to be replaced whole: it lets the add-on be built before the custom functions are written.

/**
 * Area of a rectangular room.
 *
 * @param {number} length Length of the room, feet.
 * @param {number} width Width of the room, feet.
 * @return {number} Square feet.
 * @customfunction
 */
export function PLANK_AREA(length: number, width: number): number {
  return length * width;
}
