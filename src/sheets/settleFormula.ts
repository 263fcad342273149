import { fixedAddress } from '../formula/address';
import { templateReference, templateTokens } from '../formula/templateReference';
import { blockPlace, type Layout } from './layout';
import type { TemplateTable } from './template';

const cellAddress = (id: string, { cells }: Layout): string =>
  fixedAddress(cells.get(id)?.place ?? { row: 0, column: 0 });

/** A template's formula with its addresses and table names settled. */
export function settled(
  formula: string,
  map: Layout,
  tableNames: ReadonlyMap<string, string>,
  table?: TemplateTable,
): string {
  return templateTokens(formula)
    .map((token) => {
      const to = templateReference(token);
      if (to?.kind === 'cell') return cellAddress(to.id, map);
      if (to?.kind === 'row') return `${tableNames.get(table?.id ?? '')}[[#This Row],[${to.column}]]`;
      if (to?.kind === 'column') return `${tableNames.get(to.table)}[${to.column}]`;
      return token.raw;
    })
    .join('');
}

/** A condition of a table, for one of its rows, with plain addresses: conditions know no tables. */
export function settledForRow(condition: string, map: Layout, table: TemplateTable, row: number): string {
  const ofRow = (id: string): string => {
    const column = blockPlace(table).column + table.columns.findIndex((other) => other.id === id);
    return fixedAddress({ row, column }).replace(/\$(\d+)$/, '$1');
  };
  return templateTokens(condition)
    .map((token) => {
      const to = templateReference(token);
      if (to?.kind === 'cell') return cellAddress(to.id, map);
      return to?.kind === 'row' ? ofRow(to.column) : token.raw;
    })
    .join('');
}
