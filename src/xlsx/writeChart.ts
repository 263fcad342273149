import type { Worksheet } from '@cj-tech-master/excelts';
import { FONT, PALETTE } from '../book/palette';
import { type DrawnChart, type DrawnSeries, isColumns } from '../book/chart';
import { MOST_MARKS, seriesLook } from '../book/seriesLook';
import { area, type Area } from '../formula/area';
import { areaText, fixedText } from '../formula/areaText';
import { FILE_DASHES, FILE_MARKS } from './chartLook';

/** Labels along the axis of a line with many points. */
const FEW_LABELS = 12;
const hex = (colour: string): string => colour.slice(1);

/** Size in hundredths of a point. */
const chartWords = (text: string, size: number, bold: boolean) => ({
  paragraphs: [
    { runs: [{ text, properties: { size, bold, fontFamily: FONT, color: { srgb: hex(PALETTE.slate) } } }] },
  ],
});

/** The look of a line. A solid one says nothing of its dashes. */
function lineLook(series: DrawnSeries, index: number) {
  const { ink, dash, width, marks } = seriesLook(series, index, series.values.rows);
  const colour = hex(PALETTE[ink]);
  const line = {
    line: colour,
    lineWidth: width,
    ...(dash === 'solid' || dash === 'none' ? {} : { lineDash: FILE_DASHES[dash] }),
  };
  return {
    ...(dash === 'none' ? { spPr: { line: { noFill: true } } } : line),
    smooth: false,
    marker:
      marks === 'none'
        ? ({ symbol: 'none' } as const)
        : ({ ...FILE_MARKS[marks], fill: colour, border: colour } as const),
  } as const;
}

/** The name of its series and nothing else, on one side and the other: neighbours in the list are often so in the chart. */
const nameBeside = (index: number) =>
  ({
    position: index % 2 === 0 ? 'r' : 'l',
    showSerName: true,
    showLegendKey: false,
    showVal: false,
    showCatName: false,
    showPercent: false,
    showBubbleSize: false,
  }) as const;

/**
 * Each point as a series of its own, called by the cell of its name: labels that take their words from cells are younger
 * than the programs that open our files.
 */
const eachByItsName = (series: DrawnSeries, names: Area, sheetName: string) =>
  Array.from({ length: names.rows }, (_, i) => {
    const row = (of: Area): string =>
      fixedText(sheetName, area({ row: of.row + i, column: of.column }, 1, 1));
    return {
      name: { formula: row(names) },
      xValues: row(series.x),
      values: row(series.values),
      dataLabels: nameBeside(i),
      ...lineLook(series, 0),
    };
  });

/** Draws a chart over the cells of its own sheet. */
export function addChart(chart: DrawnChart, sheetName: string, out: Worksheet): void {
  const { kind, title, xTitle, yTitle, x, series, names, place } = chart;
  const axis = {
    majorTickMark: 'outside',
    minorTickMark: 'none',
    lineColor: hex(PALETTE.slateSoft),
  } as const;
  const common = { title: chartWords(title, 1100, true), showLegend: series.length > 1 && !names };
  const axes = {
    categoryAxis: {
      ...axis,
      title: xTitle,
      ...(x.rows > MOST_MARKS && kind !== 'scatter' ? { tickLblSkip: Math.ceil(x.rows / FEW_LABELS) } : {}),
    },
    valueAxis: {
      ...axis,
      title: yTitle,
      majorGridlines: true,
      majorGridlinesStyle: { border: hex(PALETTE.stone), borderWidth: 0.75 },
    },
  };
  const write = (each: DrawnSeries, i: number) => ({
    name: each.name,
    [kind === 'scatter' ? 'xValues' : 'categories']: fixedText(sheetName, each.x),
    values: fixedText(sheetName, each.values),
    ...(isColumns(chart, each)
      ? { fill: hex(PALETTE[seriesLook(each, i, each.values.rows).ink]) }
      : lineLook(each, i)),
  });
  const options = {
    ...common,
    ...axes,
    series: names ? series.flatMap((each) => eachByItsName(each, names, sheetName)) : series.map(write),
  };
  if (kind === 'scatter') out.addScatterChart({ ...options, scatterStyle: 'lineMarker' }, areaText(place));
  else if (kind === 'line') out.addLineChart(options, areaText(place));
  else if (series.every((each) => isColumns(chart, each))) out.addColumnChart(options, areaText(place));
  else {
    const all = series.map((each, i) => ({ isColumns: isColumns(chart, each), series: write(each, i) }));
    const those = (are: boolean) => all.filter((each) => each.isColumns === are).map((each) => each.series);
    const groups = [
      { type: 'bar' as const, barDir: 'col' as const, ...axes, series: those(true) },
      { type: 'line' as const, ...axes, series: those(false) },
    ];
    out.addComboChart({ ...common, groups }, areaText(place));
  }
}
