import type { Worksheet } from '@cj-tech-master/excelts';
import type { Area } from '../formula/area';
import type { BookChart } from '../book/chart';
import { FONT, MOST_MARKS, PALETTE } from '../book/palette';
import type { BookSheet } from '../book/book';
import { areaText, fixedText } from '../formula/areas';

/** Labels along the axis of a line with many points. */
const FEW_LABELS = 12;
/** Line and column colours of the series, in turn. */
const SERIES = [PALETTE.glaze, PALETTE.clay, PALETTE.slateSoft] as const;
const hex = (colour: string): string => colour.slice(1);

/** Size in hundredths of a point. */
const chartWords = (text: string, size: number, bold: boolean) => ({
  paragraphs: [
    { runs: [{ text, properties: { size, bold, fontFamily: FONT, color: { srgb: hex(PALETTE.slate) } } }] },
  ],
});

/** Whether words stand along the axis: numbers stand at their distances, which only a scatter chart of a file does. */
const hasWords = ({ cells }: BookSheet, { row, column, rows }: Area): boolean =>
  cells.some(
    (cell) =>
      cell.column === column &&
      cell.row >= row &&
      cell.row < row + rows &&
      typeof cell.value === 'string' &&
      cell.value !== '',
  );

/** Draws a chart of a sheet over its own cells. */
export function addChart(
  { type, title, xTitle, yTitle, x, series, place }: BookChart,
  sheet: BookSheet,
  out: Worksheet,
): void {
  const axis = {
    majorTickMark: 'outside',
    minorTickMark: 'none',
    lineColor: hex(PALETTE.slateSoft),
  } as const;
  const byNumber = type === 'line' && !hasWords(sheet, x);
  const options = {
    title: chartWords(title, 1100, true),
    showLegend: series.length > 1,
    categoryAxis: {
      ...axis,
      title: xTitle,
      ...(x.rows > MOST_MARKS && !byNumber ? { tickLblSkip: Math.ceil(x.rows / FEW_LABELS) } : {}),
    },
    valueAxis: {
      ...axis,
      title: yTitle,
      majorGridlines: true,
      majorGridlinesStyle: { border: hex(PALETTE.stone), borderWidth: 0.75 },
    },
    series: series.map(({ name, values }, i) => {
      const colour = hex(SERIES[i % SERIES.length] as string);
      const line = {
        line: colour,
        lineWidth: 2,
        smooth: false,
        marker:
          values.rows > MOST_MARKS
            ? ({ symbol: 'none' } as const)
            : ({ symbol: 'circle', size: 6, fill: colour, border: colour } as const),
      } as const;
      return {
        name,
        [byNumber ? 'xValues' : 'categories']: fixedText(sheet.name, x),
        values: fixedText(sheet.name, values),
        ...(type === 'line' ? line : { fill: colour }),
      };
    }),
  };
  if (byNumber) out.addScatterChart({ ...options, scatterStyle: 'lineMarker' }, areaText(place));
  else if (type === 'line') out.addLineChart(options, areaText(place));
  else out.addColumnChart(options, areaText(place));
}
