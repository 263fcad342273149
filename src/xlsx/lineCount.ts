import { MOST_ROWS } from '../formula/areaText';

/** A number of rows or columns, whatever stands there. */
export const count = (text: string | undefined): number =>
  Math.min(MOST_ROWS, Math.max(0, Math.floor(Number(text ?? 0)) || 0));
