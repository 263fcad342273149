import { lex } from './lex';
import { placeOf } from './sheetPlace';

/**
 * Whether a formula of a file, our functions turned back, looks into another file or program. The sign | stands between
 * another program and what it is asked for, and has no other meaning in a formula. What cannot be read may look outside.
 */
export const looksOutside = (formula: string): boolean =>
  /[[|]/.test(formula) &&
  lex(formula).some(
    ({ kind, raw, before }) =>
      (before !== undefined && placeOf(before).isElsewhere) ||
      (kind === 'unknown' && (raw.includes('|') || (raw.includes('[') && raw.includes('!')))),
  );
