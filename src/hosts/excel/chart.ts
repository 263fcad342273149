import {
  type BookChart,
  type ChartKind,
  type DrawnChart,
  drawnCharts,
  isColumns,
  type TableShape,
} from '../../book/chart';
import { PALETTE } from '../../book/palette';
import { seriesLook, type SeriesLook } from '../../book/seriesLook';
import { at } from '../../exposure/core/at';
import { area, type Area } from '../../formula/area';
import { fixedText } from '../../formula/areaText';
import { bottomRight, excelRange, topLeft } from './ranges';

const KINDS = {
  column: 'ColumnClustered',
  line: 'Line',
  scatter: 'XYScatterLines',
} as const satisfies Record<ChartKind, string>;
/** A fine dash is a dash of a thin line. */
const DASHES = {
  solid: 'Continuous',
  dash: 'Dash',
  dot: 'Dot',
  dashDot: 'DashDot',
  fine: 'Dash',
  none: 'None',
} as const satisfies Record<SeriesLook['dash'], string>;

/** Points across. */
const DIAMOND = 10;

/** Each point has its name beside it, which stays that of its cell; neighbours in the list have theirs on two sides. */
function writeNames(series: Excel.ChartSeries, names: Area, sheetName: string): void {
  for (let i = 0; i < names.rows; i++) {
    const cell = area({ row: names.row + i, column: names.column }, 1, 1);
    const point = series.points.getItemAt(i);
    point.hasDataLabel = true;
    point.dataLabel.formula = `=${fixedText(sheetName, cell)}`;
    point.dataLabel.position = i % 2 === 0 ? 'Right' : 'Left';
  }
}

function drawSeries(series: Excel.ChartSeries, chart: DrawnChart, index: number): void {
  const drawn = at(chart.series, index);
  const look = seriesLook(drawn, index, chart.x.rows);
  const ink = PALETTE[look.ink];
  if (isColumns(chart, drawn)) {
    series.format.fill.setSolidColor(ink);
    return;
  }
  if (chart.kind === 'column') series.chartType = KINDS.line;
  series.format.line.color = ink;
  series.format.line.lineStyle = DASHES[look.dash];
  if (look.width === 1) series.format.line.weight = 1;
  if (look.marks === 'none') {
    series.markerStyle = 'None';
    return;
  }
  if (look.marks === 'diamond') {
    series.markerStyle = 'Diamond';
    series.markerSize = DIAMOND;
  }
  series.markerBackgroundColor = ink;
  series.markerForegroundColor = ink;
}

export function drawCharts(
  sheet: Excel.Worksheet,
  plan: {
    readonly name: string;
    readonly charts: readonly BookChart[];
    readonly tables: readonly TableShape[];
  },
): void {
  for (const planned of drawnCharts(plan)) {
    const [first] = planned.series;
    if (!first) continue;
    const chart = sheet.charts.add(KINDS[planned.kind], excelRange(sheet, first.values), 'Columns');
    const axis = excelRange(sheet, planned.x);
    for (const [i, { name, values, x }] of planned.series.entries()) {
      // Excel makes the first series itself, of the range that the chart is added with.
      const series = i === 0 ? chart.series.getItemAt(0) : chart.series.add(name);
      series.name = name;
      series.setValues(excelRange(sheet, values));
      series.setXAxisValues(x === planned.x ? axis : excelRange(sheet, x));
      drawSeries(series, planned, i);
      if (planned.names) writeNames(series, planned.names, plan.name);
    }
    chart.title.text = planned.title;
    chart.legend.visible = planned.series.length > 1;
    chart.axes.categoryAxis.title.text = planned.xTitle;
    chart.axes.valueAxis.title.text = planned.yTitle;
    chart.setPosition(topLeft(planned.place), bottomRight(planned.place));
  }
}
