import './languageTag';
import uPlot from 'uplot';
import { seriesLook, type SeriesLook } from '../book/seriesLook';
import { at } from '../exposure/core/at';
import { chartRows } from './chartRows';
import type { LiveChart } from './host';
import { numberText, plainNumber } from './numberText';

/** Colours as the page's styles settle them, light, dark or forced. */
export interface Inks {
  readonly text: string;
  readonly lines: string;
  /** One for each series. */
  readonly series: readonly string[];
}

const FONT_SIZE = 12;
const FONT = `${FONT_SIZE}px "Segoe UI", system-ui, sans-serif`;
const LINE_HEIGHT = 200;
const TITLE_SIZE = 20;
const MOST_LETTERS = 16;
const NAME_GAP = 8;
const GROUP_HEIGHT = 28;
const BAR_HEIGHT = 14;
const AXIS_HEIGHT = 32;
const PADDING = 4;
/** Beside a line chart, for the numbers of its axis. */
const LEAST_BESIDE = 32;
/** Part of a name's place that its bars fill. */
const BARS_FILL = 0.7;
/** Between a bar's end and its number. */
const NUMBER_GAP = 4;
/** What the bars need at least, whatever their numbers take. */
const LEAST_FOR_BARS = 40;
const DASHES: Readonly<Record<SeriesLook['dash'], number[]>> = {
  solid: [],
  dash: [8, 4],
  dot: [2, 4],
  dashDot: [8, 4, 2, 4],
  fine: [4, 3],
  none: [],
};

export const hasNumbers = ({ series }: LiveChart): boolean =>
  series.some(({ values }) => values.some((value) => value != null));

/** The height at which a chart can be read: columns lie on their side and need a line for each name. */
const chartHeight = ({ kind, x, series }: LiveChart): number =>
  kind !== 'column'
    ? LINE_HEIGHT
    : AXIS_HEIGHT + x.length * Math.max(GROUP_HEIGHT, series.length * BAR_HEIGHT + GROUP_HEIGHT - BAR_HEIGHT);

/** Draws a chart into an element of a given width. */
export function drawChart(chart: LiveChart, inks: Inks, place: HTMLElement, width: number): uPlot {
  const options = { width, height: chartHeight(chart), cursor: { show: false }, legend: { show: false } };
  return chart.kind !== 'column'
    ? new uPlot({ ...options, ...lineOptions(chart, inks) }, lineData(chart), place)
    : new uPlot({ ...options, ...barOptions(chart, inks) }, barData(chart), place);
}

type Drawing = Pick<uPlot.Options, 'scales' | 'axes' | 'series' | 'padding' | 'hooks'>;

const axisLook = (inks: Inks, label: string): uPlot.Axis => ({
  stroke: inks.text,
  font: FONT,
  labelFont: FONT,
  label,
  labelSize: TITLE_SIZE,
  labelGap: 0,
  grid: { stroke: inks.lines, width: 1 },
  ticks: { show: false },
});

/** Numbers along an axis, as the cells show them; with more decimals where two of them would look alike. */
function tickTexts(format: string): uPlot.Axis.DynamicValues {
  return (_, splits) => {
    const texts = splits.map((split) => numberText(split, format));
    return new Set(texts).size === texts.length ? texts : splits.map(plainNumber);
  };
}

/** The library leaves a line unbroken where a series has undefined, and breaks it at null. */
function lineData(chart: LiveChart): uPlot.AlignedData {
  // Words count 1, 2, 3 along the axis: a number among them stands at its own count.
  const rows = chartRows(chart).map((row, i) => ({
    ...row,
    at: chart.kind === 'scatter' ? Number(row.x) : i < chart.x.length ? i : Number(row.x) - 1,
  }));
  rows.sort((a, b) => a.at - b.at);
  return [rows.map((row) => row.at), ...chart.series.map((_, i) => rows.map(({ values }) => values[i]))];
}

/** As many names along an axis as have room, each as far from the next. */
const namesBelow = ({ x }: LiveChart): Pick<uPlot.Axis, 'incrs' | 'space' | 'values'> => ({
  incrs: Array.from({ length: Math.max(1, x.length) }, (_, i) => i + 1),
  space: namesWidth(x),
  values: (_, splits) => splits.map((i) => shortName(String(x[i] ?? ''))),
});

function lineOptions(chart: LiveChart, inks: Inks): Drawing {
  return {
    scales: { x: { time: false } },
    // A name at the end of the axis stands half beyond it.
    ...(chart.kind === 'line' ? { padding: [null, Math.ceil(namesWidth(chart.x) / 2), null, null] } : {}),
    axes: [
      {
        ...axisLook(inks, chart.xTitle),
        size: 24,
        ...(chart.kind === 'line' ? namesBelow(chart) : { values: (_, splits) => splits.map(plainNumber) }),
      },
      {
        ...axisLook(inks, chart.yTitle),
        size: (_, texts) =>
          Math.max(LEAST_BESIDE, ...(texts ?? []).map((text) => textWidth(text) + NAME_GAP)),
        values: tickTexts(chart.series[0]?.format ?? 'General'),
      },
    ],
    series: [
      {},
      ...chart.series.map((series, i) => {
        const { dash, width, marks } = seriesLook(series, i, chart.x.length);
        const ink = inks.series[i] ?? inks.text;
        return {
          label: series.name,
          stroke: ink,
          width,
          dash: DASHES[dash],
          ...(dash === 'none' ? { paths: () => null } : {}),
          points: {
            show: marks !== 'none',
            size: 7,
            fill: ink,
            ...(marks === 'diamond' ? { paths: diamonds } : {}),
          },
        };
      }),
    ],
  };
}

/** From the middle of a diamond to its corners. */
const DIAMOND = 7;

/** A diamond on each point of a series. */
const diamonds: uPlot.Series.Points.PathBuilder = (plot, index) => {
  const fill = new Path2D();
  const reach = DIAMOND * devicePixelRatio;
  for (const [i, value] of (plot.data[index] ?? []).entries()) {
    if (value == null) continue;
    const [x, y] = [plot.valToPos(at(plot.data[0], i), 'x', true), plot.valToPos(value, 'y', true)];
    fill.moveTo(x, y - reach);
    for (const [dx, dy] of [
      [reach, 0],
      [0, reach],
      [-reach, 0],
    ] as const)
      fill.lineTo(x + dx, y + dy);
    fill.closePath();
  }
  return { fill };
};

const barData = ({ x, series }: LiveChart): uPlot.AlignedData => [
  x.map((_, i) => i),
  ...series.map(({ values }) => x.map((_, i) => values[i] ?? null)),
];

/** From the least to the most of all bars, nought included, with room at both ends for the numbers. */
function barRange({ series }: LiveChart, width: number): [number, number] {
  const shown = series.flatMap(({ values, format }) =>
    values.flatMap((value) => (value == null ? [] : [{ value, text: numberText(value, format) }])),
  );
  const least = Math.min(0, ...shown.map(({ value }) => value));
  const most = Math.max(0, ...shown.map(({ value }) => value));
  const room = (texts: typeof shown): number =>
    Math.max(0, ...texts.map(({ text }) => textWidth(text) + NUMBER_GAP));
  const below = room(shown.filter(({ value }) => value < 0));
  const above = room(shown.filter(({ value }) => value >= 0));
  const perPixel = (most - least || 1) / Math.max(LEAST_FOR_BARS, width - below - above);
  return [least - below * perPixel, most + above * perPixel];
}

/** Columns laid on their side, so that long names can be read in a narrow pane. */
function barOptions(chart: LiveChart, inks: Inks): Drawing {
  const { x, series } = chart;
  return {
    padding: [4, PADDING, 0, 0],
    scales: {
      x: { time: false, ori: 1, dir: -1, range: [-0.5, x.length - 0.5] },
      y: {
        ori: 0,
        dir: 1,
        range: (plot) => barRange(chart, plot.width - namesWidth(x) - TITLE_SIZE - PADDING),
      },
    },
    axes: [
      {
        ...axisLook(inks, chart.xTitle),
        side: 3,
        size: namesWidth(x),
        gap: NAME_GAP / 2,
        grid: { show: false },
        splits: () => x.map((_, i) => i),
        values: (_, splits) => splits.map((i) => shortName(String(x[i] ?? ''))),
      },
      // The bars carry their numbers: a line at nought is all they need.
      { ...axisLook(inks, chart.yTitle), side: 2, size: 4, splits: () => [0], values: () => [''] },
    ],
    series: [
      {},
      ...series.map(({ name }, i) => ({
        label: name,
        fill: inks.series[i] ?? inks.text,
        width: 0,
        points: { show: false },
        paths: barPaths(i, series.length),
      })),
    ],
    hooks: { draw: [(plot) => writeNumbers(plot, chart, inks)] },
  };
}

/** The middle of a bar along the axis of names: the bars of one name lie side by side. */
const barMiddle = (name: number, bar: number, bars: number): number =>
  name - BARS_FILL / 2 + ((bar + 0.5) * BARS_FILL) / bars;

function barPaths(bar: number, bars: number): uPlot.Series.PathBuilder {
  return (plot) => {
    const fill = new Path2D();
    const half = (BARS_FILL / bars / 2) * 0.9;
    for (const [name, value] of (plot.data[bar + 1] ?? []).entries()) {
      if (value == null) continue;
      const middle = barMiddle(name, bar, bars);
      const [left, right] = [0, value].map((v) => plot.valToPos(v, 'y', true)) as [number, number];
      const [top, bottom] = [middle - half, middle + half].map((v) => plot.valToPos(v, 'x', true)) as [
        number,
        number,
      ];
      fill.rect(left, top, right - left, bottom - top);
    }
    return { fill };
  };
}

/** Each bar's number at its end. */
function writeNumbers(plot: uPlot, { series }: LiveChart, inks: Inks): void {
  const { ctx } = plot;
  const ratio = devicePixelRatio;
  ctx.save();
  ctx.fillStyle = inks.text;
  ctx.font = FONT.replace(/^\d+/, String(FONT_SIZE * ratio));
  ctx.textBaseline = 'middle';
  for (const [bar, { values, format }] of series.entries())
    for (const [name, value] of values.entries()) {
      if (value == null) continue;
      ctx.textAlign = value < 0 ? 'right' : 'left';
      const end = plot.valToPos(value, 'y', true) + (value < 0 ? -NUMBER_GAP : NUMBER_GAP) * ratio;
      ctx.fillText(
        numberText(value, format),
        end,
        plot.valToPos(barMiddle(name, bar, series.length), 'x', true),
      );
    }
  ctx.restore();
}

const shortName = (name: string): string =>
  name.length > MOST_LETTERS ? `${name.slice(0, MOST_LETTERS - 1)}…` : name;

/** The width that the longest name takes. */
const namesWidth = (x: LiveChart['x']): number =>
  Math.max(0, ...x.map((name) => textWidth(shortName(String(name))))) + NAME_GAP;

const measure = document.createElement('canvas').getContext('2d');

function textWidth(text: string): number {
  if (!measure) return 0;
  measure.font = FONT;
  return Math.ceil(measure.measureText(text).width);
}
