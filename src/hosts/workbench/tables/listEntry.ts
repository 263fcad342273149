const plain = (words: string): string => words.trim().toLowerCase();

/**
 * The entry of a list that words mean: what is the same apart from small and capital letters, and blanks around it. Undefined
 * where that is none, or more than one.
 */
export function entryMeant(words: string, entries: readonly string[]): string | undefined {
  const same = entries.find((entry) => entry === words) ?? entries.find((entry) => entry === words.trim());
  if (same !== undefined) return same;
  const [entry, ...others] = new Set(entries.filter((each) => plain(each) === plain(words)));
  return others.length === 0 ? entry : undefined;
}
