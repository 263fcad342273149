import type { ChartKind } from '../../../book/chart';

/** A scatter that has nothing but words along its axis runs over them in their order, as a line does. */
export const kindOver = (kind: ChartKind, xs: readonly unknown[]): ChartKind =>
  kind === 'scatter' &&
  !xs.some((x) => typeof x === 'number') &&
  xs.some((x) => typeof x === 'string' && x !== '')
    ? 'line'
    : kind;

/** The rows of a chart that have a place along its axis. */
export const rowsDrawn = (kind: ChartKind, xs: readonly (number | string | null)[]): number[] =>
  xs.flatMap((x, row) =>
    (kind === 'scatter' ? typeof x === 'number' : x !== null && x !== '') ? [row] : [],
  );
