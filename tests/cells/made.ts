import { Q } from '../../src/catalogue/quantities';
import type { AnyRow } from '../../src/catalogue/types';

/** What a function made for a test has besides its arguments, answers and `run`. */
export const MADE = {
  id: 'MADE',
  family: 'light',
  gives: '',
  result: Q.stops,
  formula: '',
  sources: [],
  examples: [],
} as const satisfies Partial<AnyRow>;
