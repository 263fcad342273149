import type { Book, BookTable, ColumnFilter } from '../book/book';

/** An attribute's text; what no file may hold is left out. */
const escaped = (text: string): string => text.replaceAll(/[&<>"\p{Cc}]/gu, (sign) => ESCAPED[sign] ?? '');
const ESCAPED: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\n': '&#10;',
  '\r': '&#13;',
  '\t': '&#9;',
};

const filterColumn = ({ column, texts, blank }: ColumnFilter): string =>
  `<filterColumn colId="${column}"><filters${blank ? ' blank="1"' : ''}>` +
  texts.map((text) => `<filter val="${escaped(text)}"/>`).join('') +
  '</filters></filterColumn>';

/** The part of a table with its filters, which the writer has no words for: it says only that a column has no button. */
function withFilters(xml: string, filters: readonly ColumnFilter[]): string {
  return filters.reduce(
    (part, filter) =>
      part.replace(
        new RegExp(`<filterColumn colId="${filter.column}" hiddenButton="1"\\s*/>`),
        // a text may hold signs that stand for something in a replacement
        () => filterColumn(filter),
      ),
    xml,
  );
}

/** The tables of a book that are filtered, by name. */
export const filteredTables = ({ sheets }: Book): ReadonlyMap<string, readonly ColumnFilter[]> =>
  new Map(
    sheets
      .flatMap(({ tables }): readonly BookTable[] => tables)
      .flatMap(({ name, filters = [] }) => (filters.length > 0 ? [[name, filters] as const] : [])),
  );

export const isTablePart = (name: string): boolean => /^xl\/tables\/table\d+\.xml$/.test(name);

/** The part of a table as it has to be; nothing where it has no filter. */
export function filteredPart(
  xml: string,
  tables: ReadonlyMap<string, readonly ColumnFilter[]>,
): string | undefined {
  const filters = tables.get(/displayName="([^"]*)"/.exec(xml)?.[1] ?? '');
  return filters && withFilters(xml, filters);
}
