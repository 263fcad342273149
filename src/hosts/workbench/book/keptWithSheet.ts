import type { CustomData, IWorksheetData } from '@univerjs/core';
import { type BookChart, type ChartCells, tableNow, type TableShape } from '../../../book/chart';
import type { BookSheet } from '../../../book/book';
import type { BookPicture } from '../../../book/picture';
import { keepPage, type KeptPage } from './printedPage';

/** What the grid has no place for: it travels with the sheet, through undo, storage and copies. */
export interface Kept {
  readonly charts: readonly BookChart[];
  /** Drawn from the cells like charts: none of them is stored. */
  readonly pictures?: readonly BookPicture[];
  /** Says that places count from the first row of the sheet: of old they did from the end of a table. */
  readonly places: 'sheet';
  readonly page: KeptPage;
}

export const KEY = 'sweeptable';

export const keep = ({
  charts,
  tables,
  cells,
  page,
}: Pick<BookSheet, 'charts' | 'tables' | 'cells' | 'page'>): CustomData => ({
  [KEY]: { charts, places: 'sheet', page: keepPage(page, tables, cells) } satisfies Kept,
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

/** The charts of a sheet, those whose table is gone among them. */
export const keptCharts = (kept: Kept | undefined, tables: readonly TableShape[]): readonly BookChart[] =>
  (kept?.charts ?? []).map((chart) => renamed(chart, tables));
