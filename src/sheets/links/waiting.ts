import type { KnownTable } from '../../book/kinds/kind';
import { numberOf, partnersOf } from '../../book/lookUp';
import type { Field, Template, TemplateColumn, TemplateTable } from '../template';
import { fieldsOf } from './formHere';

const tablesOf = ({ blocks }: Template): TemplateTable[] =>
  blocks.filter((block): block is TemplateTable => block.kind === 'table');

const has = (tables: readonly KnownTable[], id: string): boolean =>
  tables.some(({ name }) => numberOf(name, id) !== undefined);

/**
 * The sheets, by what they are usually called, that could look something up in one which now comes into a workbook with these
 * tables, and had nowhere to look before.
 */
export function waitingFor(
  coming: Template,
  templates: readonly Template[],
  tables: readonly KnownTable[],
): string[] {
  const news = tablesOf(coming).filter(({ id }) => !has(tables, id)).map(({ id }) => id); // prettier-ignore
  return templates
    .filter((template) => {
      const isWaiting = ({ from }: Pick<Field | TemplateColumn, 'from'>): boolean =>
        from !== undefined && news.includes(from.table);
      const here = tablesOf(template).filter(({ id }) => has(tables, id));
      return here.length > 0 && [...here.flatMap(({ columns }) => columns), ...fieldsOf(template)].some(isWaiting); // prettier-ignore
    })
    .map(({ name }) => name);
}

/** Columns that a list has under another name, or has not any more. */
export interface Lacking {
  /** Id of the table, as its template gives it. */
  readonly table: string;
  readonly columns: readonly string[];
}

/** What a sheet that now comes in would look up in lists of the workbook that others of its columns find, and cannot. */
export function lackingIn(coming: Template, tables: readonly KnownTable[]): Lacking[] {
  const parts = [...tablesOf(coming).flatMap(({ columns }) => columns), ...fieldsOf(coming)];
  const wishes = parts.flatMap(({ from }) => (from ? [from] : []));
  const isFound = (from: (typeof wishes)[number]): boolean => partnersOf(from, tables).length > 0;
  return [...new Set(wishes.filter(isFound).map(({ table }) => table))].flatMap((table) => {
    const lost = wishes.filter((from) => from.table === table && !isFound(from)).map(({ column }) => column);
    return lost.length === 0 ? [] : [{ table, columns: [...new Set(lost)] }];
  });
}
