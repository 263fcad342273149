import { parseAddress } from '../../formula/address';
import type { Area } from '../../formula/area';
import type { Check, Kind } from './kind';

export interface PrintAreaWish {
  /** The last cell that prints, where numbers that nobody takes to the set stand right of it; left out, all prints. */
  readonly printsTo?: string;
}

export interface WithPrintArea {
  /** What is printed; everything where it is absent. */
  readonly area?: Area;
}

export const printArea: Kind = {
  page: ({ printsTo }) => (printsTo === undefined ? {} : { last: parseAddress(printsTo) }),
};

export const printAreaCheck: Check = {
  property: 'printsTo',
  of: ['template'],
  shape: {
    $ref: '#/definitions/cell',
    description: 'The last cell that prints, where numbers that nobody takes to the set stand right of it.',
  },
};
