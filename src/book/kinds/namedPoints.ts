import type { RoleLook } from '../seriesLook';
import type { Check, Kind } from './kind';

export interface NamedPointsWish {
  /** Points over numbers, not joined, each with its name from this column beside it; an empty name is not written. */
  readonly names?: string;
}

export const NAMED_POINTS = {
  ink: 'glaze',
  dash: 'none',
  width: 2,
  marks: 'dots',
} as const satisfies RoleLook;

export const namedPoints: Kind = {
  points: ({ names }, column) =>
    names === undefined ? undefined : { names: column(names), role: 'named' as const },
};

export const namedPointsCheck: Check = {
  property: 'names',
  of: ['chart'],
  shape: {
    $ref: '#/definitions/heading',
    description: 'Column of the names that stand beside the points of its one series, which are not joined.',
  },
  chartFaults({ names, kind, table, series }, formatOf) {
    if (names === undefined) return [];
    const column = table.columns.find(({ id }) => id === names);
    if (!column) return [`table ${table.id} has no column ${names}`];
    return [
      ...(formatOf(column.quantity)?.align === 'left' ? [] : [`${names} holds no names`]),
      ...(kind === 'scatter' ? [] : ['named points need numbers along the axis']),
      ...(series.length === 1 ? [] : ['named points are those of one series']),
    ];
  },
};
