/** A script with parts of it put otherwise: edits `{ start, end, put }` in any order, none overlapping. */
export function edited(code, edits) {
  let [text, at] = ['', 0];
  for (const { start, end, put } of edits.toSorted((a, b) => a.start - b.start)) {
    text += code.slice(at, start) + put;
    at = end;
  }
  return text + code.slice(at);
}
