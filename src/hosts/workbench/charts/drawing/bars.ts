import type uPlot from 'uplot';
import { isColumns } from '../../../../book/chart';
import { seriesLook } from '../../../../book/seriesLook';
import { at } from '../../../../exposure/core/at';
import { numberText } from '../../../../pane/numberText';
import type { LiveChart } from '../liveChart';
import { axisLook, type Inks, type Size, TITLE_SIZE } from './axes';
import { barFill } from './barFill';
import { stroke } from './stroke';
import { fontAt, shortName, textWidth, widest } from './words';

const NAME_GAP = 8;
const PADDING = 4;
/** Part of a name's place that its bars fill. */
const BARS_FILL = 0.7;
/** Between a bar's end and its number. */
const NUMBER_GAP = 4;
/** What the bars need at least, whatever their numbers take. */
const LEAST_FOR_BARS = 40;
/** A line of words: names and numbers that have less than this would lie over each other. */
const LINE = 14;
/** Below the bars, where there is no number. */
const FOOT = 4;

export const barData = ({ x, series }: LiveChart): uPlot.AlignedData => [
  x.map((_, i) => i),
  ...series.map(({ values }) => x.map((_, i) => values[i] ?? null)),
];

const barsOf = (chart: LiveChart): LiveChart['series'] =>
  chart.series.filter((each) => isColumns(chart, each));

/** The numbers of the lines across all bars, by where they stand. */
const lineNumbers = (chart: LiveChart): ReadonlyMap<number, string> =>
  new Map(
    chart.series
      .filter((each) => !isColumns(chart, each))
      .flatMap(({ values, format }) =>
        values.flatMap((value) => (value === null ? [] : [[value, numberText(value, format)] as const])),
      ),
  );

/** What is below the bars, at the usual zoom: numbers of lines, where there are any. */
const footOf = (chart: LiveChart): number =>
  TITLE_SIZE + FOOT + (lineNumbers(chart).size > 0 ? LINE + FOOT : 0);

/** What each bar says at its end; nothing where there is no room for it. A line says its number at its foot. */
function numbersOf(chart: LiveChart, { height, zoom }: Size): (string | undefined)[][] {
  const { x, series } = chart;
  const places = Math.max(1, x.length * barsOf(chart).length);
  const bar = ((height - footOf(chart) * zoom) * BARS_FILL) / places;
  const hasRoom = bar >= LINE * zoom * BARS_FILL;
  return series.map((each) =>
    each.values.map((value) =>
      value == null || (isColumns(chart, each) && !hasRoom) ? undefined : numberText(value, each.format),
    ),
  );
}

/** From the least to the most of all bars, nought included, with room at both ends for the numbers. */
function barRange(
  { series }: LiveChart,
  numbers: (string | undefined)[][],
  width: number,
  zoom: number,
): [number, number] {
  const shown = series.flatMap(({ values }, s) =>
    values.flatMap((value, i) => (value == null ? [] : [{ value, text: numbers[s]?.[i] }])),
  );
  const least = Math.min(0, ...shown.map(({ value }) => value));
  const most = Math.max(0, ...shown.map(({ value }) => value));
  const room = (of: typeof shown): number =>
    Math.max(
      0,
      ...of.map(({ text }) => (text === undefined ? 0 : textWidth(text, zoom) + NUMBER_GAP * zoom)),
    );
  const below = room(shown.filter(({ value }) => value < 0));
  const above = room(shown.filter(({ value }) => value >= 0));
  const perPixel = (most - least || 1) / Math.max(LEAST_FOR_BARS * zoom, width - below - above);
  return [least - below * perPixel, most + above * perPixel];
}

/** Columns laid on their side, so that long names can be read. */
export function barOptions(
  chart: LiveChart,
  inks: Inks,
  size: Size,
): Omit<uPlot.Options, 'width' | 'height'> {
  const { x, series } = chart;
  const { zoom, height } = size;
  const lines = lineNumbers(chart);
  const names = widest(x.map(shortName), zoom) + NAME_GAP * zoom;
  const numbers = numbersOf(chart, size);
  const every = Math.max(1, Math.ceil((x.length * LINE * zoom) / Math.max(1, height - footOf(chart) * zoom)));
  return {
    padding: [4 * zoom, PADDING * zoom, 0, 0],
    scales: {
      x: { time: false, ori: 1, dir: -1, range: [-0.5, x.length - 0.5] },
      y: {
        ori: 0,
        dir: 1,
        range: (plot) => barRange(chart, numbers, plot.width - names - (TITLE_SIZE + PADDING) * zoom, zoom),
      },
    },
    axes: [
      {
        ...axisLook(inks, chart.xTitle, zoom),
        side: 3,
        size: names,
        gap: (NAME_GAP / 2) * zoom,
        grid: { show: false },
        splits: () => x.flatMap((_, i) => (i % every === 0 ? [i] : [])),
        values: (_, splits) => splits.map((i) => shortName(x[i] ?? '')),
      },
      // The bars carry their numbers: nought is all they need of a grid.
      {
        ...axisLook(inks, chart.yTitle, zoom),
        side: 2,
        size: (footOf(chart) - TITLE_SIZE) * zoom,
        grid: {
          stroke: inks.lines,
          width: zoom,
          filter: (_, splits) => splits.map((split) => (split === 0 ? 0 : null)),
        },
        splits: () => [...new Set([0, ...lines.keys()])],
        values: (_, splits) => splits.map((split) => lines.get(split) ?? ''),
      },
    ],
    series: [
      {},
      ...series.map((each, i) => {
        const ink = inks.series[i] ?? inks.text;
        const common = { label: each.name, points: { show: false } };
        return isColumns(chart, each)
          ? { ...common, fill: barFill(i, ink, zoom), stroke: ink, width: zoom, paths: barPaths(chart, i) }
          : { ...common, ...stroke(seriesLook(each, i, x.length), ink, zoom), paths: acrossBars };
      }),
    ],
    hooks: { draw: [(plot) => writeNumbers(plot, chart, numbers, inks, zoom)] },
  };
}

/** The middle of a bar along the axis of names, by the place of its series: the bars of one name lie side by side. */
function barMiddle(chart: LiveChart, name: number, index: number): number {
  const bars = barsOf(chart);
  const bar = bars.indexOf(at(chart.series, index));
  return name - BARS_FILL / 2 + ((bar + 0.5) * BARS_FILL) / bars.length;
}

/** A line through the places of all names, from edge to edge; each has the number of its own row. */
const acrossBars: uPlot.Series.PathBuilder = (plot, index) => {
  const path = new Path2D();
  let before: number | null | undefined;
  for (const [name, value] of (plot.data[index] ?? []).entries()) {
    if (value != null) {
      // On whole pixels a thin line is as dark as its key.
      const along = Math.round(plot.valToPos(value, 'y', true));
      if (value !== before) path.moveTo(along, plot.valToPos(name - 0.5, 'x', true));
      path.lineTo(along, plot.valToPos(name + 0.5, 'x', true));
    }
    before = value;
  }
  return { stroke: path };
};

function barPaths(chart: LiveChart, index: number): uPlot.Series.PathBuilder {
  return (plot) => {
    const path = new Path2D();
    const half = (BARS_FILL / barsOf(chart).length / 2) * 0.9;
    for (const [name, value] of (plot.data[index + 1] ?? []).entries()) {
      if (value == null) continue;
      const middle = barMiddle(chart, name, index);
      const [left, right] = [0, value].map((v) => plot.valToPos(v, 'y', true)) as [number, number];
      const [top, bottom] = [middle - half, middle + half].map((v) => plot.valToPos(v, 'x', true)) as [
        number,
        number,
      ];
      path.rect(left, top, right - left, bottom - top);
    }
    return { fill: path, stroke: path };
  };
}

/** Each bar's number at its end. */
function writeNumbers(
  plot: uPlot,
  chart: LiveChart,
  numbers: readonly (readonly (string | undefined)[])[],
  inks: Inks,
  zoom: number,
): void {
  const { ctx } = plot;
  const ratio = devicePixelRatio;
  ctx.save();
  ctx.fillStyle = inks.text;
  ctx.font = fontAt(zoom, ratio);
  ctx.textBaseline = 'middle';
  for (const [i, each] of chart.series.entries()) {
    if (!isColumns(chart, each)) continue;
    for (const [name, value] of each.values.entries()) {
      const text = numbers[i]?.[name];
      if (value == null || text === undefined) continue;
      ctx.textAlign = value < 0 ? 'right' : 'left';
      const end = plot.valToPos(value, 'y', true) + (value < 0 ? -NUMBER_GAP : NUMBER_GAP) * zoom * ratio;
      ctx.fillText(text, end, plot.valToPos(barMiddle(chart, name, i), 'x', true));
    }
  }
  ctx.restore();
}
