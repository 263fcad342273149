import { parseAddress } from '../../formula/address';
import { area } from '../../formula/area';
import type { Check, Kind } from './kind';

export interface PictureSlotWish {
  /** Cells that are kept free for a picture, which no host lays: a person puts it there. */
  readonly picture?: { readonly at: string; readonly to: string; readonly words: string };
}

export const pictureSlot: Kind = {
  slots({ picture }) {
    const [first, last] = [picture?.at, picture?.to].map((corner) => parseAddress(corner ?? ''));
    if (!picture || !first || !last) return [];
    const { row, column } = first;
    return [{ place: area(first, last.row - row + 1, last.column - column + 1), words: picture.words }];
  },
};

const cell = { $ref: '#/definitions/cell' };
export const pictureSlotCheck: Check = {
  property: 'picture',
  of: ['template'],
  shape: {
    type: 'object',
    additionalProperties: false,
    required: ['at', 'to', 'words'],
    properties: { at: cell, to: cell, words: { $ref: '#/definitions/words' } },
    description:
      'Cells that are kept free for a picture, from the first to the last, and what stands there until then.',
  },
};
