import { lex } from '../formula/lex';

/** Words to choose from, with commas between, as the bound of a rule quotes them. */
export const quotedWords = (words: string): string => `"${words.replaceAll('"', '""')}"`;

/** The words that a bound quotes; undefined where it is a range or a formula. */
export function wordsOf(bound: string): string | undefined {
  const [token, more] = lex(bound);
  return token?.kind === 'value' && typeof token.value === 'string' && !more ? token.value : undefined;
}
