import { templateReference, templateTokens } from '../../formula/templateReference';
import type { RoleLook } from '../seriesLook';
import { axisFaults } from './axisFaults';
import type { Check, Kind } from './kind';

export interface ConstantLineWish {
  /** A column that is the same in every row: a constant line. */
  readonly limit?: string;
}

export const CONSTANT_LINE = {
  ink: 'slateSoft',
  dash: 'fine',
  width: 1,
  marks: 'none',
} as const satisfies RoleLook;

export const constantLine: Kind = {
  series: ({ limit }, column) =>
    limit === undefined ? [] : [{ name: limit, values: column(limit), role: 'limit' }],
};

export const constantLineCheck: Check = {
  property: 'limit',
  of: ['chart'],
  shape: {
    $ref: '#/definitions/heading',
    description: 'Column of a constant line: its formula names no other cell of its row.',
  },
  chartFaults(chart, formatOf) {
    const { limit, table, series } = chart;
    if (limit === undefined) return [];
    const column = table.columns.find(({ id }) => id === limit);
    if (!column) return [`table ${table.id} has no column ${limit}`];
    const isConstant =
      column.formula !== undefined &&
      !templateTokens(column.formula).some((token) => templateReference(token)?.kind === 'row');
    return [
      ...(isConstant ? [] : [`a constant line is the same in every row: let a formula of ${limit} say it`]),
      ...axisFaults(limit, column.quantity, chart, series[0], formatOf),
    ];
  },
};
