import type { RoleLook } from '../seriesLook';
import { axisFaults } from './axisFaults';
import type { Check, Kind } from './kind';

export interface MarkedPointWish {
  /** One marked point over numbers, from two cells of forms by their ids. */
  readonly point?: { readonly name: string; readonly x: string; readonly y: string };
}

export const MARKED_POINT = {
  ink: 'clay',
  dash: 'none',
  width: 2,
  marks: 'diamond',
} as const satisfies RoleLook;

export const markedPoint: Kind = {
  series: ({ point }, _, cell) =>
    point ? [{ name: point.name, x: cell(point.x), values: cell(point.y), role: 'point' }] : [],
};

export const markedPointCheck: Check = {
  property: 'point',
  of: ['chart'],
  shape: {
    type: 'object',
    additionalProperties: false,
    required: ['name', 'x', 'y'],
    description: 'A marked point, from two cells of forms.',
    properties: {
      name: { $ref: '#/definitions/words' },
      x: { $ref: '#/definitions/id' },
      y: { $ref: '#/definitions/id' },
    },
  },
  chartFaults(chart, formatOf) {
    const { point, kind, x, series, quantityOf } = chart;
    if (!point) return [];
    if (kind === 'column') return ['columns have no marked point'];
    const onAxis = (id: string, along: string | undefined): string[] => {
      const quantity = quantityOf(id);
      return quantity === undefined
        ? [`there is no cell {${id}}`]
        : axisFaults(`{${id}}`, quantity, chart, along, formatOf);
    };
    return [
      ...(kind === 'line' ? ['a marked point needs numbers along the axis'] : []),
      ...onAxis(point.x, x),
      ...onAxis(point.y, series[0]),
    ];
  },
};
