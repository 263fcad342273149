import type { CustomData, IWorksheetData } from '@univerjs/core';
import { type BookChart, type ChartCells, tableNow, type TableShape } from '../../../book/chart';
import type { BookSheet } from '../../../book/book';
import { keepPage, type KeptPage } from './printedPage';

/** As a chart was kept before: columns of one table, each series under the heading of its own. */
interface FormerChart extends Omit<BookChart, 'kind' | 'x' | 'series'> {
  readonly type: 'column' | 'line';
  readonly table: string;
  readonly x: string;
  readonly series: readonly string[];
}

/** What the grid has no place for: it travels with the sheet, through undo, storage and copies. */
export interface Kept {
  /** The place of a chart counts rows from the end of the table along its axis. */
  readonly charts: readonly (BookChart | FormerChart)[];
  readonly page: KeptPage;
}

const KEY = 'sweeptable';

function fromFormer({ type, table, x, series, ...rest }: FormerChart): BookChart {
  const of = (column: string): ChartCells => ({ table, column });
  return {
    ...rest,
    kind: type === 'line' ? 'scatter' : type,
    x: of(x),
    series: series.map((name) => ({ name, values: of(name) })),
  };
}

/** The row after the table that a chart has along its axis; the first of the sheet where it has plain cells there. */
function endOfTable({ x }: BookChart, tables: readonly TableShape[]): number {
  const found = 'table' in x ? tables.find(({ name }) => name === x.table) : undefined;
  return found ? found.area.row + found.area.rows : 0;
}

const moved = (chart: BookChart, rows: number): BookChart => ({
  ...chart,
  place: { ...chart.place, row: chart.place.row + rows },
});

export const keep = ({
  charts,
  tables,
  page,
}: Pick<BookSheet, 'charts' | 'tables' | 'page'>): CustomData => ({
  [KEY]: {
    charts: charts.map((chart) => moved(chart, -endOfTable(chart, tables))),
    page: keepPage(page, tables),
  } satisfies Kept,
});

export const keptWith = ({ custom }: Pick<IWorksheetData, 'custom'>): Kept | undefined =>
  custom?.[KEY] as Kept | undefined;

/** A chart that names its tables as they are called now: one may have another name since, on a copy of its sheet too. */
function renamed(chart: BookChart, tables: readonly TableShape[]): BookChart {
  const all = [chart.x, ...chart.series.flatMap(({ values, x }) => (x ? [values, x] : [values]))];
  const nameNow = (table: string): string => {
    const wanted = all.flatMap((from) => ('table' in from && from.table === table ? [from.column] : []));
    return tableNow(table, wanted, tables)?.name ?? table;
  };
  const now = (from: ChartCells): ChartCells =>
    'table' in from ? { ...from, table: nameNow(from.table) } : from;
  return {
    ...chart,
    x: now(chart.x),
    series: chart.series.map((each) => ({
      ...each,
      values: now(each.values),
      ...(each.x ? { x: now(each.x) } : {}),
    })),
  };
}

/** The charts of a sheet where its tables are now, those whose table is gone among them. */
export const keptCharts = (kept: Kept | undefined, tables: readonly TableShape[]): readonly BookChart[] =>
  (kept?.charts ?? []).map((stored) => {
    const chart = renamed('kind' in stored ? stored : fromFormer(stored), tables);
    const { place } = moved(chart, endOfTable(chart, tables));
    return { ...chart, place: { ...place, row: Math.max(0, place.row) } };
  });
