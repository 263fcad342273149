import type { BookTable } from '../book/book';
import { looksOutside } from '../formula/looksOutside';
import { asTyped, isTooLong } from '../formula/spelling';
import type { LeftOut } from './notKept';
import { unescaped } from './readTexts';
import { parseArea } from '../formula/areaText';
import type { Relation } from './relations';
import { child, children, isTrue, type XmlNode, treeOf, words } from './xml';
import type { Package } from './zip';

/** A table of a file. */
export interface TableRead {
  readonly table: BookTable;
  /** Whether its rows are filtered: then it is the filter that hides rows of it. */
  readonly isFiltered: boolean;
}

/** The tables of a sheet. */
export async function readTables(
  file: Package,
  relations: readonly Relation[],
  leftOut: LeftOut,
): Promise<TableRead[]> {
  const tables: TableRead[] = [];
  for (const { type, part } of relations) {
    if (type !== 'table' || part === undefined) continue;
    const root = await treeOf(file, part);
    const table = root && tableOf(root, leftOut);
    if (root && table) tables.push({ table, isFiltered: isFiltered(root) });
  }
  return tables;
}

/** A column may say no more than that it has no button. */
const isFiltered = (root: XmlNode): boolean =>
  children(child(root, 'autoFilter'), 'filterColumn').some((column) => column.children.length > 0);

function tableOf(root: XmlNode, leftOut: LeftOut): BookTable | undefined {
  const { ref = '', displayName, name, headerRowCount = '1', totalsRowCount = '0' } = root.attributes;
  const whole = parseArea(ref);
  const totals = isTrue(totalsRowCount) ? 1 : 0;
  const area = whole && { ...whole, rows: whole.rows - totals };
  if (!area || area.rows < 1 || headerRowCount === '0') {
    leftOut.say('Tables without a heading row stay as plain cells.');
    return undefined;
  }
  const columns = children(child(root, 'tableColumns'), 'tableColumn').map((column) => {
    const formula = words(child(column, 'calculatedColumnFormula'));
    const typed = asTyped(formula);
    return {
      name: unescaped(column.attributes.name ?? ''),
      ...(formula === '' || isTooLong(formula) || looksOutside(typed) ? {} : { formula: typed }),
    };
  });
  return { name: displayName ?? name ?? '', area, columns };
}
