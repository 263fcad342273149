import { fixedAddress } from '../formula/address';
import { type Token, tokens } from '../formula/template';
import { blockPlace, type Layout } from './layout';
import type { TemplateTable } from './template';

const cellAddress = ({ id }: Extract<Token, { kind: 'cell' }>, { cells }: Layout): string =>
  fixedAddress(cells.get(id)?.place ?? { row: 0, column: 0 });

/** A template's formula with its addresses and table names settled. */
export function settled(
  formula: string,
  map: Layout,
  tableNames: ReadonlyMap<string, string>,
  table?: TemplateTable,
): string {
  const text = tokens(formula)
    .map((piece) => {
      if (piece.kind === 'cell') return cellAddress(piece, map);
      if (piece.kind === 'row') return `${tableNames.get(table?.id ?? '')}[[#This Row],[${piece.column}]]`;
      if (piece.kind === 'column') return `${tableNames.get(piece.table)}[${piece.column}]`;
      return piece.raw;
    })
    .join('');
  return `=${text}`;
}

/** A condition of a table, for one of its rows, with plain addresses: conditions know no tables. */
export function settledForRow(condition: string, map: Layout, table: TemplateTable, row: number): string {
  const ofRow = (id: string): string => {
    const column = blockPlace(table).column + table.columns.findIndex((other) => other.id === id);
    return fixedAddress({ row, column }).replace(/\$(\d+)$/, '$1');
  };
  const text = tokens(condition)
    .map((piece) => {
      if (piece.kind === 'cell') return cellAddress(piece, map);
      return piece.kind === 'row' ? ofRow(piece.column) : piece.raw;
    })
    .join('');
  return `=${text}`;
}
