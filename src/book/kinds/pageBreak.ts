import { parseAddress } from '../../formula/address';
import type { Check, Kind } from './kind';

export interface PageBreakWish {
  /** Prints from the top of a page. */
  readonly newPage?: true;
}

export interface WithPageBreaks {
  /** Rows that start a new page. */
  readonly breaks: readonly number[];
}

export const pageBreak: Kind = {
  page: ({ blocks }) => ({
    breaks: blocks.flatMap(({ newPage, at }) => (newPage ? [parseAddress(at)?.row ?? 0] : [])),
  }),
};

export const pageBreakCheck: Check = {
  property: 'newPage',
  of: ['form', 'table'],
  shape: { const: true, description: 'Prints from the top of a page.' },
};
