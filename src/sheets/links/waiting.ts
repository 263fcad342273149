import type { KnownTable } from '../../book/kinds/kind';
import { numberOf } from '../../book/lookUp';
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
