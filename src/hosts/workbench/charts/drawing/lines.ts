import type uPlot from 'uplot';
import { seriesLook } from '../../../../book/seriesLook';
import { at } from '../../../../exposure/core/at';
import { plainNumber } from '../../../../pane/numberText';
import type { LiveChart } from '../liveChart';
import { axisLook, type Inks, type Size, tickTexts } from './axes';
import { chartRows } from './chartRows';
import { areMarked, stopMarks, stopRange, stopText } from './stopMarks';
import { writeNames } from './names';
import { figureSteps } from './figureSteps';
import { stroke } from './stroke';
import { shortName, textWidth, widest } from './words';

/** Beside a line chart, for the numbers of its axis. */
const LEAST_BESIDE = 32;
const BELOW = 24;
const NAME_GAP = 8;
const POINT = 7;
/** From the middle of a diamond to its corners. */
const DIAMOND = 7;
/** Between two marks of f-numbers, one above the other. */
const LINE = 18;
/** Part of an axis that it is longer than its points, so that it ends behind them. */
const JUST_PAST = 1e-9;

/** The library leaves a line unbroken where a series has undefined, and breaks it at null. */
export function lineData(chart: LiveChart): uPlot.AlignedData {
  // Words count 1, 2, 3 along the axis: a number among them stands at its own count.
  const rows = chartRows(chart).map((row, i) => ({
    ...row,
    at: chart.kind === 'scatter' ? Number(row.x) : i < chart.x.length ? i : Number(row.x) - 1,
  }));
  rows.sort((a, b) => a.at - b.at);
  return [rows.map((row) => row.at), ...chart.series.map((_, i) => rows.map(({ values }) => values[i]))];
}

type Drawing = Pick<uPlot.Options, 'scales' | 'axes' | 'series' | 'padding' | 'hooks'>;
interface Along {
  readonly scale: uPlot.Scale;
  readonly axis: Pick<uPlot.Axis, 'incrs' | 'space' | 'splits' | 'values' | 'filter'>;
}

/** As many names along an axis as have room, each as far from the next. */
const alongNames = ({ x }: LiveChart, zoom: number): Along => ({
  scale: { time: false },
  axis: {
    incrs: Array.from({ length: Math.max(1, x.length) }, (_, i) => i + 1),
    space: widest(x.map(shortName), zoom) + NAME_GAP * zoom,
    values: (_, splits) => splits.map((i) => shortName(x[i] ?? '')),
  },
});

/**
 * The library takes the first of several points at the very end of an axis for the last of all, and leaves the others out: so
 * the axis ends behind them, by less than can be seen.
 */
const justPast = (least: number, most: number): [number, number] => [
  least,
  most + (most - least) * JUST_PAST,
];

/** A stop is as far from the next everywhere, and the marks are those of an aperture ring. */
function alongStops(values: readonly number[], space: number): Along {
  const range = stopRange(values);
  return {
    scale: { time: false, distr: 3, log: 2, range: () => justPast(...range) },
    axis: {
      space,
      splits: (plot, axis) => {
        const length = (axis === 0 ? plot.bbox.width : plot.bbox.height) / devicePixelRatio;
        return stopMarks(...range, length / space).map((mark) => mark.at);
      },
      // The library writes but few of a scale of logarithms by itself.
      filter: (_, splits) => splits,
      values: (_, splits) => splits.map(stopText),
    },
  };
}

function across(chart: LiveChart, xs: readonly number[], zoom: number): Along {
  if (chart.kind === 'line') return alongNames(chart, zoom);
  if (areMarked(chart.xFormat, xs)) return alongStops(xs, textWidth('f/5.6', zoom) + 2 * NAME_GAP * zoom);
  return {
    scale: { time: false, range: (_, least, most) => justPast(least, most) },
    axis: {
      space: 50 * zoom,
      values: (_, splits) => splits.map(plainNumber),
      ...figureSteps(xs),
    },
  };
}

function upward({ series }: LiveChart, zoom: number): Along {
  const values = series.flatMap((each) => each.values.filter((value) => value !== null));
  const format = series[0]?.format ?? 'General';
  if (areMarked(format, values)) return alongStops(values, LINE * zoom);
  return { scale: {}, axis: { space: 30 * zoom, values: tickTexts(format) } };
}

export function lineOptions(chart: LiveChart, inks: Inks, { zoom }: Size, data: uPlot.AlignedData): Drawing {
  const [below, beside] = [across(chart, [...data[0]], zoom), upward(chart, zoom)];
  const half = Math.ceil(widest(chart.kind === 'line' ? chart.x.map(shortName) : ['f/128'], zoom) / 2);
  return {
    ...(chart.names ? { hooks: { draw: [(plot) => writeNames(plot, chart, inks, zoom)] } } : {}),
    scales: { x: below.scale, y: beside.scale },
    // A name at the end of the axis stands half beyond it.
    padding: [8 * zoom, half, 0, 0],
    axes: [
      { ...axisLook(inks, chart.xTitle, zoom), size: BELOW * zoom, ...below.axis },
      {
        ...axisLook(inks, chart.yTitle, zoom),
        size: (_, texts) => Math.max(LEAST_BESIDE * zoom, widest(texts ?? [], zoom) + NAME_GAP * zoom),
        ...beside.axis,
      },
    ],
    series: [{}, ...chart.series.map((_, i) => lineOf(chart, i, inks, zoom))],
  };
}

function lineOf(chart: LiveChart, i: number, inks: Inks, zoom: number): uPlot.Series {
  const series = at(chart.series, i);
  const look = seriesLook(series, i, chart.x.length);
  const { dash, marks } = look;
  const ink = inks.series[i] ?? inks.text;
  return {
    label: series.name,
    ...stroke(look, ink, zoom),
    ...(dash === 'none' ? { paths: () => null } : {}),
    points: {
      show: marks !== 'none',
      size: POINT * zoom,
      fill: ink,
      ...(marks === 'diamond' ? { paths: diamonds(DIAMOND * zoom) } : {}),
    },
  };
}

/** A diamond on each point of a series, as far from its middle to its corners. */
function diamonds(size: number): uPlot.Series.Points.PathBuilder {
  return (plot, index) => {
    const fill = new Path2D();
    const reach = size * devicePixelRatio;
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
}
