import { type Area, area } from '../formula/area';
import type { Role } from './kinds';

/** A line runs over words in their order; a scatter’s over numbers, each at its distance. */
export type ChartKind = 'column' | 'line' | 'scatter';

/** Cells that a chart draws: a column of a table, whose rows may come and go, or plain cells. */
export type ChartCells = { readonly table: string; readonly column: string } | { readonly cells: Area };

export interface BookChart {
  readonly kind: ChartKind;
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  readonly x: ChartCells;
  readonly series: readonly ChartSeries[];
  /** What its points are called, one beside each value along the axis. */
  readonly names?: ChartCells;
  readonly place: Area;
}

export interface ChartSeries {
  readonly name: string;
  readonly values: ChartCells;
  /** What it is where a kind has added it: one of the chart's columns has none. */
  readonly role?: Role;
  /** Only in a scatter, where its points stand elsewhere along the axis than those of the chart. */
  readonly x?: ChartCells;
}

/** Whether a series stands as columns: what a kind adds to a chart of columns is a line over them. */
export const isColumns = ({ kind }: Pick<BookChart, 'kind'>, { role }: Pick<ChartSeries, 'role'>): boolean =>
  kind === 'column' && role === undefined;

/** A chart with the cells that it draws now: every series with those along its axis. */
export interface DrawnChart extends Omit<BookChart, 'x' | 'series' | 'names'> {
  readonly x: Area;
  readonly series: readonly DrawnSeries[];
  readonly names?: Area;
}
export interface DrawnSeries extends Omit<ChartSeries, 'x' | 'values'> {
  readonly x: Area;
  readonly values: Area;
}

/** What a chart has to know of a table. */
export interface TableShape {
  readonly name: string;
  /** Heading row and all rows below it. */
  readonly area: Area;
  readonly columns: readonly { readonly name: string }[];
}

/** The table of a name; or one that has the columns wanted, where the table has another name since. */
export function tableNow<T extends TableShape>(
  table: string,
  columns: readonly string[],
  tables: readonly T[],
): T | undefined {
  const fitting = tables.filter((each) =>
    columns.every((wanted) => each.columns.some(({ name }) => name === wanted)),
  );
  return fitting.find(({ name }) => name === table) ?? fitting[0];
}

function areaOfCells(from: ChartCells, tables: readonly TableShape[]): Area | undefined {
  if ('cells' in from) return from.cells;
  const table = tables.find(({ name }) => name === from.table);
  const index = table?.columns.findIndex(({ name }) => name === from.column) ?? -1;
  if (!table || index < 0) return undefined;
  const { row, column, rows } = table.area;
  return area({ row: row + 1, column: column + index }, Math.max(1, rows - 1), 1);
}

/** A chart where its cells are now; undefined where some of them are gone, or all that it drew is. */
export function drawnChart(chart: BookChart, tables: readonly TableShape[]): DrawnChart | undefined {
  const x = areaOfCells(chart.x, tables);
  const series = chart.series.flatMap((each) => {
    const own = each.x ? areaOfCells(each.x, tables) : x;
    const values = areaOfCells(each.values, tables);
    return own && values ? [{ ...each, x: own, values }] : [];
  });
  const isWhole = series.length > 0 && series.length === chart.series.length;
  const { names: from, ...rest } = chart;
  const names = from && areaOfCells(from, tables);
  return x && isWhole ? { ...rest, x, series, ...(names ? { names } : {}) } : undefined;
}

/** The charts of a sheet that was made to be drawn. Throws where one speaks of cells that are not there. */
export const drawnCharts = (sheet: {
  readonly charts: readonly BookChart[];
  readonly tables: readonly TableShape[];
}): readonly DrawnChart[] =>
  sheet.charts.map((chart) => {
    const drawn = drawnChart(chart, sheet.tables);
    if (!drawn) throw new Error(`The cells of the chart “${chart.title}” are not on its sheet.`);
    return drawn;
  });

/** Cells of a chart as a column, where they are all the rows of one; plain cells where they are not. */
export function byColumn(cells: Area, tables: readonly TableShape[]): ChartCells {
  const isHere = (from: ChartCells): boolean => {
    const there = areaOfCells(from, tables);
    return (['row', 'column', 'rows', 'columns'] as const).every((edge) => there?.[edge] === cells[edge]);
  };
  return (
    tables
      .flatMap(({ name, columns }) => columns.map((column) => ({ table: name, column: column.name })))
      .find(isHere) ?? { cells }
  );
}
