import type { Area } from '../../../formula/area';
import { inserted, removed } from '../../../formula/follow';
import type { BookChart, ChartCells, ChartSeries } from '../../../book/chart';

/** Rows or columns that came in before a place, or, where there are fewer than none, went from there on. */
export interface Edit {
  readonly along: 'row' | 'column';
  readonly at: number;
  readonly count: number;
}

/** A chart keeps at least so many rows and columns. */
export const LEAST = { rows: 5, columns: 2 } as const;

/** Where cells are after an edit; an area that has no rows or no columns left where all of them went. */
export function areaAfter(area: Area, { along, at, count }: Edit): Area {
  const axis = along === 'row' ? 'rows' : 'columns';
  const after = count < 0 ? removed({ axis, at, count: -count }) : inserted({ axis, at, count });
  return after(area) ?? { ...area, [along]: at, [axis]: 0 };
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
