/** How many lines a text takes that is broken between words, where so many letters go into one. */
export function wordLines(text: string, letters: number): number {
  let [count, used] = [1, 0];
  for (const { length } of text.split(' ')) {
    if (used > 0 && used + 1 + length > letters) [count, used] = [count + 1, 0];
    used += (used > 0 ? 1 : 0) + length;
  }
  return count;
}

/** The same of a text that may have lines of its own. */
export const textLines = (text: string, letters: number): number =>
  text.split(/\r?\n/).reduce((sum, line) => sum + wordLines(line, letters), 0);
