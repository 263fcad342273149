import { alike, type LookUp, lookUpFormula, partnersOf } from '../lookUp';
import type { AskedTable, Check, Kind } from './kind';

export interface LookedUpColumnWish {
  /** Looked up where the workbook has the other table; where it has not, an input, or what the column's formula says. */
  readonly from?: LookUp;
}

export const lookedUpColumn: Kind = {
  settled({ from }, known) {
    const name = from && partnersOf(from, known)[0];
    return from && name !== undefined
      ? { formula: lookUpFormula(from), partner: [from.table, name] }
      : undefined;
  },
};

const heading = { $ref: '#/definitions/heading' };
export const lookedUpColumnCheck: Check = {
  property: 'from',
  of: ['column'],
  shape: {
    type: 'object',
    additionalProperties: false,
    required: ['table', 'key', 'column'],
    properties: { table: { $ref: '#/definitions/id' }, key: heading, column: heading },
    description:
      "Looked up by the key in another sheet's table where the workbook has it; where it has not, an input or the column's formula.",
  },
  columnFaults({ from, quantity, fixed }, own, others, formatOf) {
    if (!from) return [];
    const [partner, more] = others.filter(({ id }) => alike(id, from.table));
    if (!partner) return [`no sheet has a table ${from.table}`];
    if (more) return [`more than one sheet has a table ${from.table}`];
    if (fixed !== undefined) return ['is looked up: it cannot be fixed'];
    const missing = (table: AskedTable, id: string): string[] =>
      table.columns.some((each) => each.id === id) ? [] : [`table ${table.id} has no column ${id}`];
    const theirs = partner.columns.find(({ id }) => id === from.column);
    const [unit, wanted] = [quantity, theirs?.quantity].map((of) => of && formatOf(of)?.unit);
    return [
      ...missing(partner, from.key),
      ...missing(partner, from.column),
      ...missing(own, from.key),
      ...(unit && wanted && unit !== wanted
        ? [`is in ${unit}, but ${from.column} of ${from.table} is in ${wanted}`]
        : []),
    ];
  },
};
