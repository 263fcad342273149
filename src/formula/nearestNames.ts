/** How many letters must be put in, left out, exchanged or swapped with their neighbour to make one word of the other. */
function changes(from: string, to: string): number {
  const rows: number[][] = [Array.from({ length: to.length + 1 }, (_, j) => j)];
  const at = (i: number, j: number) => rows[i]?.[j] ?? Infinity;
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    rows.push(row);
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1];
      const swapped = from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      row[j] = Math.min(
        at(i - 1, j) + 1,
        at(i, j - 1) + 1,
        at(i - 1, j - 1) + (same ? 0 : 1),
        swapped ? at(i - 2, j - 2) + 1 : Infinity,
      );
    }
  }
  return at(from.length, to.length);
}

const withoutNamespace = (name: string): string => name.slice(name.lastIndexOf('.') + 1);

/** Up to three of the names that somebody may have meant, nearest first; none where nothing is like it. */
export function nearest(name: string, names: readonly string[]): string[] {
  const word = withoutNamespace(name);
  const reach = Math.max(1, Math.floor(word.length / 3));
  return names
    .map((each) => {
      const other = withoutNamespace(each);
      const contained = word.length > 2 && (other.includes(word) || word.includes(other)) && other.length > 2;
      return { each, distance: Math.min(changes(word, other), contained ? reach : Infinity) };
    })
    .filter(({ distance }) => distance <= reach)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 3)
    .map(({ each }) => each);
}
