import type { CustomData, IWorksheetData } from '@univerjs/core';
import { type BookChart, byColumn, type ChartCells, chartArea, type TableShape } from '../../../book/chart';
import type { BookPage, BookSheet } from '../../../book/book';

/** A chart as it is kept with its sheet: it names its columns, so that rows may come and go. */
export interface KeptChart extends Omit<BookChart, 'x' | 'series'> {
  readonly x: ChartCells;
  readonly series: readonly { readonly name: string; readonly values: ChartCells }[];
}

/** As it was kept before: columns of one table, each series under the heading of its own. */
export interface FormerChart extends Omit<BookChart, 'x' | 'series'> {
  readonly table: string;
  readonly x: string;
  readonly series: readonly string[];
}

/** What the grid has no place for: it travels with the sheet, through undo, storage and copies. */
export interface Kept {
  /** The place of a chart counts rows from the end of the table along its axis. */
  readonly charts: readonly (KeptChart | FormerChart)[];
  readonly page: BookPage;
}

const KEY = 'sweeptable';

const isFormer = (chart: KeptChart | FormerChart): chart is FormerChart => typeof chart.x === 'string';

function fromFormer({ table, x, series, ...rest }: FormerChart): KeptChart {
  const of = (column: string): ChartCells => ({ table, column });
  return { ...rest, x: of(x), series: series.map((name) => ({ name, values: of(name) })) };
}

/** The row after the table that a chart has along its axis; the first of the sheet where it has plain cells there. */
function endOfTable({ x }: KeptChart, tables: readonly TableShape[]): number {
  const found = 'table' in x ? tables.find(({ name }) => name === x.table) : undefined;
  return found ? found.area.row + found.area.rows : 0;
}

const moved = (chart: KeptChart, rows: number): KeptChart => ({
  ...chart,
  place: { ...chart.place, row: Math.max(0, chart.place.row + rows) },
});

function keptChart(chart: BookChart, tables: readonly TableShape[]): KeptChart {
  const kept = {
    ...chart,
    x: byColumn(chart.x, tables),
    series: chart.series.map(({ name, values }) => ({ name, values: byColumn(values, tables) })),
  };
  return { ...kept, place: { ...kept.place, row: kept.place.row - endOfTable(kept, tables) } };
}

export const keep = ({
  charts,
  tables,
  page,
}: Pick<BookSheet, 'charts' | 'tables' | 'page'>): CustomData => ({
  [KEY]: { charts: charts.map((chart) => keptChart(chart, tables)), page } satisfies Kept,
});

export const keptWith = ({ custom }: Pick<IWorksheetData, 'custom'>): Kept | undefined =>
  custom?.[KEY] as Kept | undefined;

/** A chart that names its tables as they are called now: one may have another name since, on a copy of its sheet too. */
function renamed(chart: KeptChart, tables: readonly TableShape[]): KeptChart {
  const all = [chart.x, ...chart.series.map(({ values }) => values)];
  const nameNow = (table: string): string => {
    const wanted = all.flatMap((from) => ('table' in from && from.table === table ? [from.column] : []));
    const fitting = tables.filter(({ columns }) =>
      wanted.every((id) => columns.some(({ name }) => name === id)),
    );
    return (fitting.find(({ name }) => name === table) ?? fitting[0])?.name ?? table;
  };
  const now = (from: ChartCells): ChartCells =>
    'table' in from ? { ...from, table: nameNow(from.table) } : from;
  return {
    ...chart,
    x: now(chart.x),
    series: chart.series.map((each) => ({ ...each, values: now(each.values) })),
  };
}

/** The charts of a sheet where its tables are now, those whose table is gone among them. */
export const keptCharts = (kept: Kept | undefined, tables: readonly TableShape[]): readonly KeptChart[] =>
  (kept?.charts ?? []).map((stored) => {
    const chart = renamed(isFormer(stored) ? fromFormer(stored) : stored, tables);
    return moved(chart, endOfTable(chart, tables));
  });

/** A chart with the cells it draws now; undefined where some of them are gone. */
export function drawnChart(chart: KeptChart, tables: readonly TableShape[]): BookChart | undefined {
  const x = chartArea(chart.x, tables);
  const series = chart.series.flatMap(({ name, values }) => {
    const cells = chartArea(values, tables);
    return cells ? [{ name, values: cells }] : [];
  });
  return x && series.length === chart.series.length ? { ...chart, x, series } : undefined;
}
