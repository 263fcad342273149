import { parseAddress } from '../formula/address';
import { area } from '../formula/area';
import type { BookChart, ChartCells, ChartKind } from '../book/chart';
import { KINDS } from '../book/kinds';
import { formatOf } from './formats';
import { isGiven, type Layout } from './layout';
import type { TemplateChart, TemplateTable } from './template';

/** Whether a column holds words, or numbers written as text such as 1/125: they have no distance from each other. */
function hasWords({ columns }: TemplateTable, name: string): boolean {
  const column = columns.find(({ id }) => id === name);
  const format = column && formatOf(column.quantity);
  return column !== undefined && (format?.align === 'left' || (format?.text === true && isGiven(column)));
}

/** Whether its columns or its line stand over words or over numbers. */
export function chartKind(chart: TemplateChart, table: TemplateTable): ChartKind {
  if (chart.type === 'column') return 'column';
  return hasWords(table, chart.x) ? 'line' : 'scatter';
}

/**
 * A chart with the columns that it draws and the cells that it covers.
 * @param tableNames - what tables are called in the workbook, by their ids.
 */
export function planChart(
  chart: TemplateChart,
  { tables, cells: fields }: Layout,
  tableNames: ReadonlyMap<string, string>,
): BookChart {
  const table = tables.get(chart.table) as TemplateTable;
  const cells = (column: string): ChartCells => ({ table: tableNames.get(chart.table) as string, column });
  const field = (id: string): ChartCells => ({
    cells: area(fields.get(id)?.place ?? { row: 0, column: 0 }, 1, 1),
  });
  const from = parseAddress(chart.from) ?? { row: 0, column: 0 };
  const to = parseAddress(chart.to) ?? from;
  const [points] = KINDS.flatMap((kind) => kind.points?.(chart, cells) ?? []);
  return {
    kind: chartKind(chart, table),
    title: chart.title,
    xTitle: chart.xTitle,
    yTitle: chart.yTitle,
    x: cells(chart.x),
    series: [
      ...chart.series.map((name) => ({
        name,
        values: cells(name),
        ...(points ? { role: points.role } : {}),
      })),
      ...KINDS.flatMap((kind) => kind.series?.(chart, cells, field) ?? []),
    ],
    ...(points ? { names: points.names } : {}),
    place: area(from, to.row - from.row + 1, to.column - from.column + 1),
  };
}
