import type { Area } from '../../formula/area';
import type { BookChart } from '../../book/chart';
import type { SheetPlan } from '../../sheets/plan';
import { MOST_MARKS, PALETTE } from '../../book/palette';
import { bottomRight, excelRange, topLeft } from './ranges';

const INKS = [PALETTE.glaze, PALETTE.clay, PALETTE.slateSoft] as const;
/** Lines are told apart in grey as well. */
const DASHES = ['Continuous', 'Dash', 'Dot'] as const;

const inside = ({ row, column, rows, columns }: Area, at: { row: number; column: number }): boolean =>
  at.row >= row && at.row < row + rows && at.column >= column && at.column < column + columns;

/** Whether the cells along the axis hold words rather than numbers. */
const hasNames = ({ x }: BookChart, { cells }: SheetPlan): boolean =>
  cells.some((cell) => inside(x, cell) && (cell.text || cell.align === 'left'));

/** Numbers along the axis stand at their distances, which only a scatter chart of Excel's does. */
function kindOf(chart: BookChart, plan: SheetPlan): 'ColumnClustered' | 'Line' | 'XYScatterLines' {
  if (chart.type === 'column') return 'ColumnClustered';
  return hasNames(chart, plan) ? 'Line' : 'XYScatterLines';
}

function drawSeries(series: Excel.ChartSeries, { type, x }: BookChart, index: number): void {
  const ink = INKS[index % INKS.length] as string;
  if (type === 'column') {
    series.format.fill.setSolidColor(ink);
    return;
  }
  series.format.line.color = ink;
  series.format.line.lineStyle = DASHES[index % DASHES.length] as (typeof DASHES)[number];
  if (x.rows > MOST_MARKS) {
    series.markerStyle = 'None';
    return;
  }
  series.markerBackgroundColor = ink;
  series.markerForegroundColor = ink;
}

export function drawCharts(sheet: Excel.Worksheet, plan: SheetPlan): void {
  for (const planned of plan.charts) {
    const [first] = planned.series;
    if (!first) continue;
    const chart = sheet.charts.add(kindOf(planned, plan), excelRange(sheet, first.values), 'Columns');
    const axis = excelRange(sheet, planned.x);
    for (const [i, { name, values }] of planned.series.entries()) {
      // Excel makes the first series itself, of the range that the chart is added with.
      const series = i === 0 ? chart.series.getItemAt(0) : chart.series.add(name);
      series.name = name;
      series.setValues(excelRange(sheet, values));
      series.setXAxisValues(axis);
      drawSeries(series, planned, i);
    }
    chart.title.text = planned.title;
    chart.legend.visible = planned.series.length > 1;
    chart.axes.categoryAxis.title.text = planned.xTitle;
    chart.axes.valueAxis.title.text = planned.yTitle;
    chart.setPosition(topLeft(planned.place), bottomRight(planned.place));
  }
}
