/** Words to choose from, with commas between, as the bound of a rule quotes them. */
export const quotedWords = (words: string): string => `"${words.replaceAll('"', '""')}"`;

/** The words that a bound quotes; undefined where it is a range or a formula. */
export const wordsOf = (bound: string): string | undefined =>
  /^"(.*)"$/.exec(bound)?.[1]?.replaceAll('""', '"');
