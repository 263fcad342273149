import type uPlot from 'uplot';
import type { SeriesLook } from '../../../../book/seriesLook';

const DASHES: Readonly<Record<SeriesLook['dash'], number[]>> = {
  solid: [],
  dash: [8, 4],
  dot: [2, 4],
  dashDot: [8, 4, 2, 4],
  fine: [4, 3],
  none: [],
};

/** A line of its ink, as wide and with such dashes as its look says. */
export const stroke = (
  { dash, width }: SeriesLook,
  ink: string,
  zoom: number,
): Required<Pick<uPlot.Series, 'stroke' | 'width' | 'dash'>> => ({
  stroke: ink,
  width: width * zoom,
  dash: DASHES[dash].map((length) => length * zoom),
});
