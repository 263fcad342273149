import type { Check, Kind } from './kind';

export interface BigTypeWish {
  /** In big type, to be read or ticked at arm's length. */
  readonly big?: true;
}

/** Points of what is read or ticked at arm's length. */
export const BIG_SIZE = 16;
/** Points of the smallest words on a sheet of big type. */
export const BIG_SHEET_SIZE = 14;

export const bigType: Kind = {
  look: ({ big }) => (big ? { size: BIG_SIZE } : {}),
  least: ({ big }) => (big ? BIG_SHEET_SIZE : undefined),
};

export const bigTypeCheck: Check = {
  property: 'big',
  of: ['template', 'field', 'column'],
  shape: { const: true, description: "In big type, to be read or ticked at arm's length." },
};
