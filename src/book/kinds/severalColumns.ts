import type { Check, Kind } from './kind';

export interface SeveralColumnsWish {
  /** So many columns wide, as one cell: words that are longer than one column stay within its fill. */
  readonly across?: number;
}

export const severalColumns: Kind = {
  across: ({ across }) => across,
};

export const severalColumnsCheck: Check = {
  property: 'across',
  of: ['field'],
  shape: {
    type: 'integer',
    minimum: 2,
    maximum: 9,
    description: 'So many columns wide, as one cell: for words that are longer than one column.',
  },
};
