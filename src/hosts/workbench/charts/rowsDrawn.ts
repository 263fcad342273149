import type { BookChart } from '../../../book/chart';

/**
 * The rows of a chart that have a place along its axis. A line over numbers has each at its distance; over words alone
 * it runs in their order, as columns do.
 */
export function rowsDrawn(type: BookChart['type'], xs: readonly (number | string | null)[]): number[] {
  const byNumber = type === 'line' && xs.some((x) => typeof x === 'number');
  return xs.flatMap((x, row) => ((byNumber ? typeof x === 'number' : x !== null && x !== '') ? [row] : []));
}
