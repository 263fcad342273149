import { PALETTE } from '../palette';
import type { AskedTable, Check, Kind } from './kind';

export interface ColourMapWish {
  /** Columns side by side whose numbers are coloured from the least of all to the most: the more, the paler, as light is. */
  readonly map?: readonly string[];
}

/** Fills from the least number of all areas to the most. */
export interface ColourScale {
  readonly kind: 'scale';
  readonly low: string;
  readonly high: string;
}

const indexOf = ({ columns }: AskedTable, name: string | undefined): number =>
  columns.findIndex(({ id }) => id === name);

export const colourMap: Kind = {
  conditions(table, cells) {
    const { map } = table;
    if (!map) return [];
    const areas = [cells(indexOf(table, map[0]), map.length)];
    return [{ kind: 'scale', areas, low: PALETTE.glazeMid, high: PALETTE.paper }];
  },
};

export const colourMapCheck: Check = {
  property: 'map',
  of: ['table'],
  shape: {
    type: 'array',
    minItems: 1,
    items: { $ref: '#/definitions/heading' },
    description:
      'Columns side by side whose numbers are coloured from the least of all to the most: the more, the paler.',
  },
  /** One scale takes one area of numbers. */
  tableFaults(table, formatOf) {
    const { id: name, columns, map = [] } = table;
    const missing = map.filter((id) => indexOf(table, id) < 0);
    if (missing.length > 0) return missing.map((id) => `table ${name} has no column ${id}`);
    const first = indexOf(table, map[0]);
    if (map.some((id, i) => indexOf(table, id) !== first + i))
      return [`${map.join(', ')} do not lie side by side`];
    const ofWords = columns.filter(
      ({ id, quantity }) => map.includes(id) && formatOf(quantity)?.align === 'left',
    );
    return ofWords.map(({ id }) => `${id} holds words, and only numbers have a least and a most`);
  },
};
