import type { ChartSeries } from '../book/chart';
import type { SeriesLook } from '../book/seriesLook';
import { below, child, type XmlNode } from './xml';

/** Dashes as a file calls them. */
export const FILE_DASHES = {
  solid: 'solid',
  dash: 'dash',
  dot: 'sysDot',
  dashDot: 'dashDot',
  fine: 'sysDash',
} as const satisfies Record<Exclude<SeriesLook['dash'], 'none'>, string>;

/** Marks as a file calls them, and points across. */
export const FILE_MARKS = {
  dots: { symbol: 'circle', size: 6 },
  diamond: { symbol: 'diamond', size: 10 },
} as const satisfies Record<Exclude<SeriesLook['marks'], 'none'>, object>;

/**
 * What a line is to its reader: a file has no word for it, but a constant line of ours looks like no other, and one
 * point by itself is a marked one.
 */
export function roleOf(series: XmlNode, isOnePoint: boolean, hasOwnX: boolean): ChartSeries['role'] {
  if (hasOwnX && isOnePoint) return 'point';
  const [dash] = below(child(child(series, 'spPr'), 'ln'), 'prstDash');
  const mark = child(child(series, 'marker'), 'symbol');
  return dash?.attributes.val === FILE_DASHES.fine && mark?.attributes.val === 'none' ? 'limit' : undefined;
}
