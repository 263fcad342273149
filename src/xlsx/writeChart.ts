import type { Worksheet } from '@cj-tech-master/excelts';
import { FONT, PALETTE } from '../book/palette';
import type { DrawnChart, DrawnSeries } from '../book/chart';
import { MOST_MARKS, seriesLook } from '../book/seriesLook';
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

/** Draws a chart over the cells of its own sheet. */
export function addChart(
  { kind, title, xTitle, yTitle, x, series, place }: DrawnChart,
  sheetName: string,
  out: Worksheet,
): void {
  const axis = {
    majorTickMark: 'outside',
    minorTickMark: 'none',
    lineColor: hex(PALETTE.slateSoft),
  } as const;
  const options = {
    title: chartWords(title, 1100, true),
    showLegend: series.length > 1,
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
    series: series.map((each, i) => ({
      name: each.name,
      [kind === 'scatter' ? 'xValues' : 'categories']: fixedText(sheetName, each.x),
      values: fixedText(sheetName, each.values),
      ...(kind === 'column'
        ? { fill: hex(PALETTE[seriesLook(each, i, each.values.rows).ink]) }
        : lineLook(each, i)),
    })),
  };
  if (kind === 'scatter') out.addScatterChart({ ...options, scatterStyle: 'lineMarker' }, areaText(place));
  else if (kind === 'line') out.addLineChart(options, areaText(place));
  else out.addColumnChart(options, areaText(place));
}
