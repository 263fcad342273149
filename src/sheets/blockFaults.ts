import { CHECKS } from '../book/kinds';
import { parseAddress } from '../formula/address';
import type { Fault } from './fault';
import { formatOf, SHEET_QUANTITIES } from './formats';
import { blockColumns, blockPlace, blockRows, coversBeside, isGiven, LEAD_ROWS } from './layout';
import { columnId } from './formulaNodes';
import type { TemplateColumn, Template, TemplateValue } from './template';

/** Cells that blocks share. */
function overlaps(template: Template): Fault[] {
  const taken = new Map<string, number>();
  const found: Fault[] = [];
  for (const [b, block] of template.blocks.entries()) {
    const start = parseAddress(block.at);
    if (!start) {
      found.push({ at: `blocks/${b}/at`, reason: `${block.at} is no cell` });
      continue;
    }
    if (start.row < LEAD_ROWS)
      found.push({
        at: `blocks/${b}/at`,
        reason: `${block.at} lies in the first ${LEAD_ROWS} rows, which the sheet needs itself`,
      });
    const { row, column } = blockPlace(block);
    const neighbours = new Set<number>();
    for (let r = row; r < row + blockRows(block); r++)
      for (let c = column; c < column + blockColumns(block); c++) {
        const other = taken.get(`${r},${c}`);
        if (other !== undefined) neighbours.add(other);
        taken.set(`${r},${c}`, b);
      }
    for (const other of neighbours)
      found.push({ at: `blocks/${b}/at`, reason: `shares cells with block ${other}` });
  }
  const { cautions, cautionsAt } = template;
  if (cautionsAt === undefined) return found;
  const first = parseAddress(cautionsAt)?.row ?? 0;
  const rows = new Set([...taken.keys()].map((key) => parseInt(key, 10)));
  if (cautions.some((_, i) => first + i < LEAD_ROWS || rows.has(first + i)))
    found.push({ at: 'cautionsAt', reason: `${cautionsAt} leaves no room for ${cautions.length} lines` });
  return found;
}

/** A row has a value for each column that is given; formulas stand where formulas are expected, and nowhere else. */
function rowFaults(row: readonly TemplateValue[], given: readonly TemplateColumn[]): string[] {
  if (row.length !== given.length)
    return [`has ${row.length} values for ${given.length} columns without a formula`];
  return given.flatMap(({ id, fixed }, i) => {
    const isFormula = typeof row[i] === 'string' && row[i].startsWith('=');
    if (isFormula === (fixed === 'formulas')) return [];
    return [isFormula ? `${id} holds no formulas` : `${id} must hold a formula`];
  });
}

/** What a spreadsheet takes for a cell, so that nothing can be called so: A1, or R1C1 and its short forms. */
const LIKE_A_CELL = /^([a-z]{1,3}\d+|r\d*(c\d*)?|c\d*)$/i;

function names(template: Template): Fault[] {
  const seen = new Set<string>();
  const found: Fault[] = [];
  const claim = (id: string, at: string): void => {
    if (seen.has(id.toLowerCase())) found.push({ at, reason: `the id ${id} stands twice` });
    if (LIKE_A_CELL.test(id)) found.push({ at, reason: `the id ${id} reads like the address of a cell` });
    seen.add(id.toLowerCase());
  };
  for (const [b, block] of template.blocks.entries()) {
    if (block.kind === 'table') {
      claim(block.id, `blocks/${b}/id`);
      const given = block.columns.filter(isGiven);
      for (const [i, column] of block.columns.entries())
        claim(columnId(block.id, column.id), `blocks/${b}/columns/${i}/id`);
      for (const [i, row] of block.rows.entries())
        for (const reason of rowFaults(row, given)) found.push({ at: `blocks/${b}/rows/${i}`, reason });
      for (const [i, column] of block.columns.entries())
        if (column.fixed !== undefined && column.formula !== undefined)
          found.push({ at: `blocks/${b}/columns/${i}`, reason: 'is both fixed and a formula' });
      continue;
    }
    for (const [i, field] of block.fields.entries()) {
      const at = `blocks/${b}/fields/${i}`;
      claim(field.id, `${at}/id`);
      if (field.tenths) claim(field.tenths.id, `${at}/tenths/id`);
      if (field.formula !== undefined && field.value !== undefined)
        found.push({ at, reason: 'is both an input and a formula' });
      if (coversBeside(field))
        found.push({ at: `${at}/across`, reason: 'reaches over the tenths or the words right of it' });
    }
  }
  return found;
}

/** What a file may write as it likes, as a reason may quote it. */
const onOneLine = (text: string): string =>
  text
    .replace(/[\p{C}\s]+/gu, ' ')
    .trim()
    .slice(0, 40) || 'an empty text';

function quantities(template: Template): Fault[] {
  return template.blocks.flatMap((block, b) =>
    (block.kind === 'form' ? block.fields : block.columns).flatMap((part, i) =>
      formatOf(part.quantity)
        ? []
        : [
            {
              at: `blocks/${b}/${block.kind === 'form' ? 'fields' : 'columns'}/${i}/quantity`,
              reason: `${onOneLine(part.quantity)} is none of ${SHEET_QUANTITIES.join(', ')}`,
            },
          ],
    ),
  );
}

/** A table that heads the pages and is none of the sheet. */
function heads({ headsPages, blocks }: Template): Fault[] {
  if (headsPages === undefined) return [];
  const isThere = blocks.some((block) => block.kind === 'table' && block.id === headsPages);
  return isThere ? [] : [{ at: 'headsPages', reason: `there is no table ${onOneLine(headsPages)}` }];
}

/** What kinds find wrong with what tables ask for. */
const asked = (template: Template): Fault[] =>
  template.blocks.flatMap((block, b) =>
    CHECKS.flatMap(({ property, tableFaults }) =>
      block.kind === 'table' && tableFaults
        ? tableFaults(block, formatOf).map((reason) => ({ at: `blocks/${b}/${property}`, reason }))
        : [],
    ),
  );

/** What is wrong with ids, rows, quantities and places: until that is right, no formula can be followed. */
export const blockFaults = (template: Template): readonly Fault[] => [
  ...names(template),
  ...quantities(template),
  ...overlaps(template),
  ...asked(template),
  ...heads(template),
];
