/**
 * A sentence in lines of at most `letters`, broken between words, so that it prints across cells that do not wrap;
 * later lines are set in. A word longer than a line is left whole.
 */
export function brokenLines(text: string, letters: number): readonly string[] {
  const lines = [''];
  for (const word of text.split(' ')) {
    const last = lines.length - 1;
    if (lines[last] === '') lines[last] = word;
    else if (lines[last].length + 1 + word.length <= letters) lines[last] += ` ${word}`;
    else lines.push(`   ${word}`);
  }
  return lines;
}
