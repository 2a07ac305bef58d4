/** Changing one part of what stands in a form. */
type Parts = Readonly<Record<string, unknown>>;

/**
 * A copy of an entry, a list or anything within with the part at `keys` changed; everything beside it stays the same
 * object. A key of a list is the place of an item, from 0.
 */
export function replacedAt(
  whole: unknown,
  [key, ...rest]: readonly string[],
  next: (before: unknown) => unknown,
): unknown {
  const before = (whole as Parts)[key];
  const part = rest.length === 0 ? next(before) : replacedAt(before, rest, next);
  if (Array.isArray(whole)) return whole.map((item, i) => (String(i) === key ? part : item));
  return { ...(whole as Parts), [key]: part };
}
