import type { BookTable } from './book';
import { looksOutside, typed } from './formulas';
import type { LeftOut } from './leftOut';
import { unescaped } from './readTexts';
import { areaOf } from './refs';
import type { Relation } from './relations';
import { child, children, type Node, tree, words } from './xml';
import type { Package } from './zip';

/** The tables of a sheet. */
export async function readTables(
  file: Package,
  relations: readonly Relation[],
  leftOut: LeftOut,
): Promise<BookTable[]> {
  const tables: BookTable[] = [];
  for (const { type, part } of relations) {
    if (type !== 'table' || part === undefined) continue;
    const content = await file.read(part);
    const table = content && tableOf(tree(content), leftOut);
    if (table) tables.push(table);
  }
  return tables;
}

function tableOf(root: Node, leftOut: LeftOut): BookTable | undefined {
  const { ref = '', displayName, name, headerRowCount = '1', totalsRowCount = '0' } = root.attributes;
  const whole = areaOf(ref);
  const area = whole && { ...whole, rows: whole.rows - (Number(totalsRowCount) || 0) };
  if (!area || area.rows < 1 || headerRowCount === '0') {
    leftOut.say('Tables without a heading row stay as plain cells.');
    return undefined;
  }
  const columns = children(child(root, 'tableColumns'), 'tableColumn').map((column) => {
    const formula = words(child(column, 'calculatedColumnFormula'));
    return {
      name: unescaped(column.attributes.name ?? ''),
      ...(formula === '' || looksOutside(formula) ? {} : { formula: typed(formula) }),
    };
  });
  return { name: displayName ?? name ?? '', area, columns };
}
