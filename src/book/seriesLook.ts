import type { PALETTE } from './palette';

/** A line of more points than these is drawn without a mark on each: they would run into one. */
export const MOST_MARKS = 40;

const INKS = ['glaze', 'clay', 'slateSoft', 'slate'] as const satisfies readonly (keyof typeof PALETTE)[];
const DASHES = ['solid', 'dash', 'dot', 'dashDot'] as const;

/** How a series is drawn, whatever draws it. Lines are told apart in grey as well. */
export interface SeriesLook {
  /** A colour of the palette, by name: a dark page has another for it. */
  readonly ink: (typeof INKS)[number];
  readonly dash: (typeof DASHES)[number];
  /** What stands on each point. */
  readonly marks: 'none' | 'dots';
}

/** The look of a chart’s series, which has so many points. */
export const seriesLook = (index: number, points: number): SeriesLook => ({
  ink: INKS[index % INKS.length] as SeriesLook['ink'],
  dash: DASHES[index % DASHES.length] as SeriesLook['dash'],
  marks: points > MOST_MARKS ? 'none' : 'dots',
});
