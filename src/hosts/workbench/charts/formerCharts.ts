import type { ICellData, IWorkbookData, IWorksheetData, Nullable } from '@univerjs/core';
import type { BookChart, ChartCells, TableShape } from '../../../book/chart';
import { storedDecorations } from '../book/decorationsToBook';
import { KEY, type Kept, keptCharts } from '../book/keptWithSheet';
import { tableShape } from './tableShapes';

/** As a chart was kept at first: columns of one table, each series under the heading of its own. */
interface FirstChart extends Omit<BookChart, 'kind' | 'x' | 'series'> {
  readonly type: 'column' | 'line';
  readonly table: string;
  readonly x: string;
  readonly series: readonly string[];
}

/** What a workbook was stored with when the place of a chart counted rows from the end of the table along its axis. */
interface Former extends Pick<Kept, 'page'> {
  readonly charts: readonly (BookChart | FirstChart)[];
  readonly places?: 'sheet';
}

function fromFirst({ type, table, x, series, ...rest }: FirstChart): BookChart {
  const of = (column: string): ChartCells => ({ table, column });
  return {
    ...rest,
    kind: type === 'line' ? 'scatter' : type,
    x: of(x),
    series: series.map((name) => ({ name, values: of(name) })),
  };
}

function endOfTable({ x }: BookChart, tables: readonly TableShape[]): number {
  const found = 'table' in x ? tables.find(({ name }) => name === x.table) : undefined;
  return found ? found.area.row + found.area.rows : 0;
}

/** What a sheet keeps, as it is kept today. */
export function keptToday(former: Former, tables: readonly TableShape[]): Kept {
  if (former.places === 'sheet') return former as Kept;
  const charts = former.charts.map((chart) => ('kind' in chart ? chart : fromFirst(chart)));
  const named = keptCharts({ ...former, charts, places: 'sheet' }, tables);
  return {
    page: former.page,
    places: 'sheet',
    charts: named.map((chart) => {
      const row = Math.max(0, chart.place.row + endOfTable(chart, tables));
      return { ...chart, place: { ...chart.place, row } };
    }),
  };
}

/** The sentence that stood where a chart is, when charts stood beside the sheet. */
const isSign = (cell: Nullable<ICellData>, { title }: BookChart): boolean =>
  cell?.v === `${title}: its chart is under “Charts” on the right.`;

/** A workbook of another day with charts that stand on their sheets. */
export function withChartsOnSheets(snapshot: IWorkbookData): IWorkbookData {
  const beside = storedDecorations(snapshot);
  const today = ([id, sheet]: [string, Partial<IWorksheetData>]): [string, Partial<IWorksheetData>] => {
    const former = sheet.custom?.[KEY] as Former | undefined;
    if (!former || former.places === 'sheet') return [id, sheet];
    const kept = keptToday(former, beside(id).tables.map(tableShape));
    const cellData = { ...sheet.cellData } as Record<number, Record<number, Nullable<ICellData>>>;
    for (const chart of kept.charts) {
      const { row, column } = chart.place;
      if (isSign(cellData[row]?.[column], chart)) cellData[row] = { ...cellData[row], [column]: {} };
    }
    return [
      id,
      {
        ...sheet,
        cellData: cellData as NonNullable<IWorksheetData['cellData']>,
        custom: { ...sheet.custom, [KEY]: kept },
      },
    ];
  };
  return { ...snapshot, sheets: Object.fromEntries(Object.entries(snapshot.sheets).map(today)) };
}
