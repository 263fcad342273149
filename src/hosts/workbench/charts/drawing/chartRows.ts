import type { LiveChart } from '../liveChart';

/** One place along the axis. A series that has no point of its own there, not even an empty one, is undefined. */
export interface ChartRow {
  readonly x: number | string;
  readonly values: readonly (number | null | undefined)[];
}

/** The places along the axis of a chart: those of all its series, then those that a series has by itself. */
export function chartRows({ x, series }: Pick<LiveChart, 'x' | 'series'>): readonly ChartRow[] {
  const common = x.map((at, row) => ({
    x: at,
    values: series.map((each) => (each.x ? undefined : (each.values[row] ?? null))),
  }));
  const own = series.flatMap((each, i) =>
    (each.x ?? []).map((at, row) => ({
      x: at,
      values: series.map((_, k) => (k === i ? (each.values[row] ?? null) : undefined)),
    })),
  );
  return [...common, ...own];
}
