import { alike, type LookUp, lookUpFormula, partnersOf } from '../lookUp';
import type { AskedTable, Check, Kind, Own } from './kind';

export interface LookedUpWish {
  /** Looked up where the workbook has the other table; where it has not, an input, or what its own formula says. */
  readonly from?: LookUp;
}

export const lookedUp: Kind = {
  settled({ from }, known) {
    const name = from && partnersOf(from, known)[0];
    return from && name !== undefined
      ? { formula: lookUpFormula(from), partner: [from.table, name] }
      : undefined;
  },
};

const missing = (table: AskedTable, id: string): string[] =>
  table.columns.some((each) => each.id === id) ? [] : [`table ${table.id} has no column ${id}`];

/** A column has its key in its own row, a field in a cell that it names. */
function keyFaults({ key, by }: LookUp, { table, cells }: Own): string[] {
  if (table) return by === undefined ? missing(table, key) : ['has its key in its row: it needs no cell'];
  if (by === undefined) return ['needs the cell that has its key'];
  return cells.has(by) ? [] : [`there is no cell ${by}`];
}

const heading = { $ref: '#/definitions/heading' };
export const lookedUpCheck: Check = {
  property: 'from',
  of: ['field', 'column'],
  shape: {
    type: 'object',
    additionalProperties: false,
    required: ['table', 'key', 'column'],
    properties: {
      table: { $ref: '#/definitions/id' },
      key: heading,
      column: heading,
      by: {
        $ref: '#/definitions/id',
        description: 'The cell that has the key: for a field, which has no row.',
      },
    },
    description:
      "Looked up by the key in another sheet's table where the workbook has it; where it has not, an input or its own formula.",
  },
  partnerFaults({ from, quantity, fixed }, own, others, formatOf) {
    if (!from) return [];
    const [partner, more] = others.filter(({ id }) => alike(id, from.table));
    if (!partner) return [`no sheet has a table ${from.table}`];
    if (more) return [`more than one sheet has a table ${from.table}`];
    if (fixed !== undefined) return ['is looked up: it cannot be fixed'];
    const theirs = partner.columns.find(({ id }) => id === from.column);
    const [unit, wanted] = [quantity, theirs?.quantity].map((of) => of && formatOf(of)?.unit);
    return [
      ...missing(partner, from.key),
      ...missing(partner, from.column),
      ...keyFaults(from, own),
      ...(unit && wanted && unit !== wanted
        ? [`is in ${unit}, but ${from.column} of ${from.table} is in ${wanted}`]
        : []),
    ];
  },
};
