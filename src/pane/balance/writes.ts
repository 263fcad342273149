import type { Setting } from '../../exposure/balance/heads/settings';
import { at } from '../../exposure/core/at';
import { addressIn, cellIn, type CellWrite, textIn } from './block';
import { ROWS } from './layout';
import type { ReadTable } from './readTable';
import { shownPower } from './said';

/**
 * What is to be written to set the heads: their powers and pops, each into its row. What was measured belongs to the powers
 * from before, and is cleared.
 *
 * @returns a sentence where a cell that would be written holds a formula, or its row is missing.
 */
export function writesFor(
  { block, layout, heads, points }: ReadTable,
  settings: readonly Setting[],
): readonly CellWrite[] | string {
  const { setTo, pops } = layout.rows;
  const hasPops = settings.some((setting) => setting.pops > 1);
  if (setTo === undefined)
    return `The table has no row “${ROWS.setTo}” for the new powers: add it, then read the table again.`;
  if (pops === undefined && hasPops)
    return `The table has no row “${ROWS.pops}” for the pops: add it, then read the table again.`;
  const writes: CellWrite[] = heads.flatMap((head, h) => {
    const setting = at(settings, h);
    const at1 = { row: setTo, column: head.column, value: shownPower(head, setting.power) };
    return pops === undefined ? [at1] : [at1, { row: pops, column: head.column, value: setting.pops }];
  });
  const { measured } = layout.columns;
  if (measured !== undefined)
    for (const { row } of points)
      if (textIn(block, row, measured) !== '') writes.push({ row, column: measured, value: '' });
  const formula = writes.find(({ row, column }) => cellIn(block, row, column).isFormula);
  return formula
    ? `${addressIn(block, formula.row, formula.column)} holds a formula, which is not written over. Nothing was changed. Put a plain value there, then read the table again.`
    : writes;
}
