import template from '../../templates/pops-plan.json';
import { rowOf } from '../../src/catalogue';
import type { AnyRow } from '../../src/catalogue/types';
import { call } from '../../src/cells/call';
import { planAlone } from '../../src/sheets/makePlan';
import type { Template, TemplateTable } from '../../src/sheets/template';
import { openedBook } from '../sheets/openedBook';
import { median, medianOf, ms, say, times } from './measure';

/**
 * How much work the sheet of the plan is where one cell has changed, at first and after many edits, and where all of its formulas are
 * calculated, beside one solution of its plan: that is solved once for all cells.
 */
const HEADS = 12;
const EDITS = 40;

const sheetTemplate = template as unknown as Template;
const lights = sheetTemplate.blocks.find(
  (block): block is TemplateTable => block.kind === 'table' && block.id === 'Plan',
) as TemplateTable;
const READING = lights.columns.findIndex(({ id }) => id === 'Reading');

/** As many lights as there are heads, the first of them the key and every other one of the demo job's fills. */
const rows = Array.from({ length: HEADS }, (_, i) => {
  const row = [...(lights.rows[Math.min(i, 3)] as TemplateTable['rows'][number])];
  row[0] = `Head ${i + 1}`;
  if (i > 3) row[1] = 'accent';
  return row;
});

async function main(): Promise<void> {
  const blocks = sheetTemplate.blocks.map((block) => (block === lights ? { ...lights, rows } : block));
  const { sheet } = planAlone({ ...sheetTemplate, blocks }, true);
  const book = await openedBook([sheet]);
  await book.calculate();
  const table = sheet.tables.find(({ name }) => name === 'Plan');
  if (!table) throw new Error('The sheet has no table of lights.');
  const column = (name: string): unknown[][] => {
    const at = table.area.column + lights.columns.findIndex(({ id }) => id === name);
    const cells = book.read(sheet.name, `A1:BS${table.area.row + 1 + HEADS}`);
    return Array.from({ length: HEADS }, (_, i) => [cells[table.area.row + 1 + i]?.[at] ?? null]);
  };
  let reading = 8;
  const cell = book.workbook.getSheetByName(sheet.name)?.getRange(table.area.row + 2, table.area.column + READING); // prettier-ignore
  const workOf = async (calculate: () => Promise<void>): Promise<number> => {
    reading = reading === 8 ? 11 : 8;
    cell?.setValue({ v: reading });
    // what this process has worked: others may be at work on the machine
    const start = process.cpuUsage();
    await calculate();
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  };
  const all = await medianOf(() => workOf(book.calculate));
  const took = await medianOf(() => workOf(book.calculateChanged));
  for (let edit = 0; edit < EDITS; edit++) await workOf(book.calculateChanged);
  const later = await medianOf(() => workOf(book.calculateChanged));
  const names = ['Reads on', 'Power on', 'Target', 'Least on', 'Most on', 'Recycle on'] as const;
  const [reads, powers, targets, least, most, recycle] = names.map(column);
  const row = rowOf('POPSPLAN') as AnyRow;
  // each time another reading of the first: a plan that is kept is not solved again
  let nth = 0;
  const solved = median(() => {
    nth++;
    const other = (reads as unknown[][]).map(([n], i) => [i === 0 ? Number(n) * (1 + nth / 1e6) : n]);
    call(row, [other, powers, targets, least, most, recycle, 0.5]);
  });
  say(`Pops plan of ${HEADS} lights: one reading changed`, {
    'ms (goal 100)': ms(took),
    [`after ${EDITS} more`]: ms(later),
    'all formulas ms': ms(all),
    'one plan solved ms': ms(solved),
    'times one plan solved': times(took, solved),
  });
  book.dispose();
}

void main();
