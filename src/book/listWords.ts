import { lex } from '../formula/lex';

/** The words that a bound quotes; undefined where it is a range or a formula. */
export function wordsOf(bound: string): string | undefined {
  const [token, more] = lex(bound);
  return token?.kind === 'value' && typeof token.value === 'string' && !more ? token.value : undefined;
}
