import { parseAddress } from '../formula/address';
import { blockPlace, type Layout, tableTop } from './layout';
import { area, type Area } from '../formula/area';
import type { BookChart } from '../book/chart';
import type { TemplateChart, TemplateTable } from './template';

/** A chart with the cells that it draws and those that it covers. */
export function planChart(chart: TemplateChart, { tables }: Layout): BookChart {
  const table = tables.get(chart.table) as TemplateTable;
  const column = (name: string): Area =>
    area(
      {
        row: tableTop(table) + 1,
        column: blockPlace(table).column + table.columns.findIndex((c) => c.id === name),
      },
      table.rows.length,
      1,
    );
  const from = parseAddress(chart.from) ?? { row: 0, column: 0 };
  const to = parseAddress(chart.to) ?? from;
  return {
    type: chart.type,
    title: chart.title,
    xTitle: chart.xTitle,
    yTitle: chart.yTitle,
    x: column(chart.x),
    series: chart.series.map((name) => ({ name, values: column(name) })),
    place: area(from, to.row - from.row + 1, to.column - from.column + 1),
  };
}
