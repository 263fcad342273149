import type { ChartSeries } from './chart';
import type { PALETTE } from './palette';

/** A line of more points than these is drawn without a mark on each: they would run into one. */
export const MOST_MARKS = 40;

const INKS = ['glaze', 'clay', 'slateSoft', 'slate'] as const satisfies readonly (keyof typeof PALETTE)[];
const DASHES = ['solid', 'dash', 'dot', 'dashDot'] as const;

/** How a series is drawn, whatever draws it. Lines are told apart in grey as well. */
export interface SeriesLook {
  /** A colour of the palette, by name: a dark page has another for it. */
  readonly ink: (typeof INKS)[number];
  /** None where its points are not joined. */
  readonly dash: (typeof DASHES)[number] | 'fine' | 'none';
  /** Width of the line, in points. */
  readonly width: 1 | 2;
  /** What stands on each point. */
  readonly marks: 'none' | 'dots' | 'diamond';
}

const OF_ROLE = {
  limit: { ink: 'slateSoft', dash: 'fine', width: 1, marks: 'none' },
  point: { ink: 'clay', dash: 'none', width: 2, marks: 'diamond' },
} as const satisfies Record<NonNullable<ChartSeries['role']>, SeriesLook>;

const inTurn = <T>(list: readonly T[], index: number): T => list[index % list.length] as T;

/** The look of the series at a place among those of its chart, which has so many points. */
export const seriesLook = ({ role }: Pick<ChartSeries, 'role'>, index: number, points: number): SeriesLook =>
  role
    ? OF_ROLE[role]
    : {
        ink: inTurn(INKS, index),
        dash: inTurn(DASHES, index),
        width: 2,
        marks: points > MOST_MARKS ? 'none' : 'dots',
      };
