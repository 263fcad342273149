import type { Area } from '../../../formula/area';
import type { BookChart, ChartCells, ChartSeries } from '../../../book/chart';

/** Rows or columns that came in before a place, or, where there are fewer than none, went from there on. */
export interface Edit {
  readonly along: 'row' | 'column';
  readonly at: number;
  readonly count: number;
}

/** A chart keeps at least so many rows and columns. */
export const LEAST = { rows: 5, columns: 2 } as const;

/** Where a run of rows or columns is after an edit. What comes in within it makes it longer. */
function run(start: number, length: number, { at, count }: Edit): [start: number, length: number] {
  if (count >= 0) {
    if (at <= start) return [start + count, length];
    return [start, at < start + length ? length + count : length];
  }
  const gone = (from: number, to: number): number =>
    Math.max(0, Math.min(to, at - count) - Math.max(from, at));
  return [start - gone(0, start), length - gone(start, start + length)];
}

/** Where cells are after an edit; an area that has no rows or no columns left where all of them went. */
export function areaAfter({ row, column, rows, columns }: Area, edit: Edit): Area {
  const down = edit.along === 'row' ? run(row, rows, edit) : ([row, rows] as const);
  const across = edit.along === 'column' ? run(column, columns, edit) : ([column, columns] as const);
  return { row: down[0], rows: down[1], column: across[0], columns: across[1] };
}

/** Plain cells after an edit; nothing where they are gone. Columns of a table find themselves. */
function cellsAfter(from: ChartCells, edit: Edit): ChartCells | undefined {
  if (!('cells' in from)) return from;
  const cells = areaAfter(from.cells, edit);
  return cells.rows > 0 && cells.columns > 0 ? { cells } : undefined;
}

function seriesAfter({ x, values, ...rest }: ChartSeries, edit: Edit): ChartSeries[] {
  const [along, up] = [x && cellsAfter(x, edit), cellsAfter(values, edit)];
  if (!up || (x && !along)) return [];
  return [{ ...rest, values: up, ...(along ? { x: along } : {}) }];
}

/** A chart after an edit: it moves with its cells and keeps what is left to draw, which may be nothing. */
export function chartAfter(chart: BookChart, edit: Edit): BookChart {
  const x = cellsAfter(chart.x, edit);
  const place = areaAfter(chart.place, edit);
  return {
    ...chart,
    x: x ?? chart.x,
    series: x ? chart.series.flatMap((each) => seriesAfter(each, edit)) : [],
    place: {
      ...place,
      rows: Math.max(Math.min(LEAST.rows, chart.place.rows), place.rows),
      columns: Math.max(Math.min(LEAST.columns, chart.place.columns), place.columns),
    },
  };
}
