import type { ICommandInfo, IRange } from '@univerjs/core';
import type { Reorder } from '../../formula/followEdit';
import { areaOfGridRange } from '../gridRange';

/** Rows of a range that change places, as those are told of it who keep something by places of a sheet. */
export interface RowsSorted {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly range: IRange;
  /** Which row, counted in the range, comes to stand in each. */
  readonly from: readonly number[];
}

export const ROWS_SORTED = 'sweeptable.rows-sorted';

export const reorderOf = ({ range, from }: RowsSorted): Reorder => ({ block: areaOfGridRange(range), from });

/** What is told of a step that sorts rows; nothing for all other commands. */
export const rowsSortedBy = ({ id, params }: ICommandInfo): RowsSorted | undefined =>
  id === ROWS_SORTED ? (params as RowsSorted) : undefined;
