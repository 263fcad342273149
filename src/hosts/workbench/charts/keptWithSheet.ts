import type { CustomData, IWorksheetData } from '@univerjs/core';
import type { Area } from '../../../formula/area';
import type { BookChart } from '../../../book/chart';
import type { BookPage, BookSheet, BookTable } from '../../../book/book';

/** A chart as it is kept with its sheet: it names its columns, so that rows may come and go. */
export interface KeptChart {
  readonly type: BookChart['type'];
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  readonly table: string;
  readonly x: string;
  readonly series: readonly string[];
  /** Where a file shows it: rows are counted from the end of the table. */
  readonly place: Area;
}

/** What the grid has no place for: it travels with the sheet, through undo, storage and copies. */
export interface Kept {
  readonly charts: readonly KeptChart[];
  readonly page: BookPage;
}

const KEY = 'sweeptable';

const endOf = ({ area }: BookTable): number => area.row + area.rows;
const holds = (table: BookTable, { row, column }: Area): boolean =>
  row > table.area.row &&
  row < endOf(table) &&
  column >= table.area.column &&
  column < table.area.column + table.area.columns;

function keptChart(chart: BookChart, tables: readonly BookTable[]): readonly KeptChart[] {
  const table = tables.find((each) => holds(each, chart.x));
  const x = table?.columns[chart.x.column - table.area.column]?.name;
  if (!table || x === undefined) return [];
  const { type, title, xTitle, yTitle, series, place } = chart;
  return [
    {
      type,
      title,
      xTitle,
      yTitle,
      table: table.name,
      x,
      series: series.map(({ name }) => name),
      place: { ...place, row: place.row - endOf(table) },
    },
  ];
}

export const keep = ({
  charts,
  tables,
  page,
}: Pick<BookSheet, 'charts' | 'tables' | 'page'>): CustomData => ({
  [KEY]: { charts: charts.flatMap((chart) => keptChart(chart, tables)), page } satisfies Kept,
});

export const keptWith = ({ custom }: Pick<IWorksheetData, 'custom'>): Kept | undefined =>
  custom?.[KEY] as Kept | undefined;

/** The charts where the rows of their tables are now. One whose table is gone is left out. */
export function keptCharts(kept: Kept | undefined, tables: readonly BookTable[]): readonly BookChart[] {
  return (kept?.charts ?? []).flatMap((chart) => {
    const wanted = [chart.x, ...chart.series];
    const fitting = tables.filter(({ columns }) =>
      wanted.every((id) => columns.some(({ name }) => name === id)),
    );
    const table = fitting.find(({ name }) => name === chart.table) ?? fitting[0];
    if (!table) return [];
    const { type, title, xTitle, yTitle, place } = chart;
    const values = (id: string): Area => ({
      row: table.area.row + 1,
      rows: table.area.rows - 1,
      column: table.area.column + table.columns.findIndex(({ name }) => name === id),
      columns: 1,
    });
    return [
      {
        type,
        title,
        xTitle,
        yTitle,
        x: values(chart.x),
        series: chart.series.map((name) => ({ name, values: values(name) })),
        place: { ...place, row: Math.max(0, endOf(table) + place.row) },
      },
    ];
  });
}
