import type { SeriesLook } from '../book/seriesLook';

/** Dashes as a file calls them. */
export const FILE_DASHES = {
  solid: 'solid',
  dash: 'dash',
  dot: 'sysDot',
  dashDot: 'dashDot',
} as const satisfies Record<SeriesLook['dash'], string>;
