import type { ChartSeries } from './chart';
import { ROLE_LOOKS } from './kinds';
import type { PALETTE } from './palette';

/** A line of more points than these is drawn without a mark on each: they would run into one. */
export const MOST_MARKS = 40;

const INKS = ['glaze', 'clay', 'slateSoft', 'slate'] as const satisfies readonly (keyof typeof PALETTE)[];
const DASHES = ['solid', 'dash', 'dot', 'dashDot'] as const;

/** A colour of the palette, by name: a dark page has another for it. */
type Ink = (typeof INKS)[number];
/** Width of the line, in points. */
type Width = 1 | 2;

/** How a kind has a series drawn: every host knows the dashes and marks that are named so. */
export interface RoleLook {
  readonly ink: Ink;
  readonly dash: string;
  readonly width: Width;
  readonly marks: string;
}
type OfRoles = (typeof ROLE_LOOKS)[keyof typeof ROLE_LOOKS];

/** How a series is drawn, whatever draws it. Lines are told apart in grey as well. */
export interface SeriesLook {
  readonly ink: Ink;
  /** None where its points are not joined. */
  readonly dash: (typeof DASHES)[number] | OfRoles['dash'];
  readonly width: Width;
  /** What stands on each point. */
  readonly marks: 'none' | 'dots' | OfRoles['marks'];
}

const inTurn = <T>(list: readonly T[], index: number): T => list[index % list.length] as T;

/** The look of the series at a place among those of its chart, which has so many points. */
export const seriesLook = ({ role }: Pick<ChartSeries, 'role'>, index: number, points: number): SeriesLook =>
  role
    ? ROLE_LOOKS[role]
    : {
        ink: inTurn(INKS, index),
        // the next round of inks has other dashes: no two lines are alike before all of both are used up
        dash: inTurn(DASHES, index + Math.trunc(index / INKS.length)),
        width: 2,
        marks: points > MOST_MARKS ? 'none' : 'dots',
      };
