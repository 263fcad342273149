import type { ChartKind, ChartSeries } from '../../../book/chart';

/** A chart with the numbers that its cells show now. */
export interface LiveChart {
  readonly kind: ChartKind;
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  /** Numbers for a scatter, names for columns and lines. */
  readonly x: readonly (number | string)[];
  /** Number format of the cells along the axis. */
  readonly xFormat: string;
  /** What its points are called; an empty name is none. */
  readonly names?: readonly string[];
  /** None where the cells that it drew are gone. */
  readonly series: readonly LiveSeries[];
}

export interface LiveSeries {
  readonly name: string;
  readonly values: readonly (number | null)[];
  readonly format: string;
  readonly role?: NonNullable<ChartSeries['role']>;
  /** Where its points stand elsewhere along the axis than those of the chart. */
  readonly x?: readonly number[];
}

/** Whether a series has anything to draw now: one for a light that is not there has not. */
export const isDrawn = ({ values }: LiveSeries): boolean => values.some((value) => value !== null);
