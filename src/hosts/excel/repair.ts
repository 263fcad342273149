import { withNamesMended } from '../../formula/spelling';
import type { MendedCell } from '../../pane/host';
import { address } from '../../formula/address';
import { type Change, changeCells, type Changed } from './changeCells';
import { WHEN_READY } from './lay';
import { among, findInFormulas, type UsedPart } from './usedCells';

function lostIn({ name, area }: UsedPart, formulas: readonly (readonly unknown[])[]): MendedCell[] {
  return formulas.flatMap((line, r) =>
    line.flatMap((before, c) => {
      const after = typeof before === 'string' ? withNamesMended(before) : undefined;
      const cell = address({ row: area.row + r, column: area.column + c });
      return after === undefined ? [] : [{ sheet: name, cell, before: String(before), after }];
    }),
  );
}

/**
 * Every cell of the workbook with a lost name in it, with what it would hold once mended. Changes nothing. Excel tells words behind an
 * apostrophe as it tells a formula (OfficeDev/office-js #6687), but then they are the value as well.
 */
export const findLost = (excel: typeof Excel): Promise<MendedCell[]> =>
  excel.run(WHEN_READY, async (context) =>
    among(context, await findInFormulas(context, lostIn), 'values', ({ values }, { before }) => values[0]?.[0] !== before),
  ); // prettier-ignore

const change = (excel: typeof Excel, changes: readonly Change[], tried?: MendedCell[]): Promise<Changed> =>
  excel.run(WHEN_READY, (context) => changeCells(context, changes, tried));

/**
 * Writes the mended formulas, each where the lost one still stands. Entered anew, Excel looks the function up anew.
 * @param tried - is told each cell before it is written
 */
export const mendLost = (
  excel: typeof Excel,
  cells: readonly MendedCell[],
  tried: MendedCell[],
): Promise<Changed> =>
  change(excel, cells.map((of) => ({ of, from: of.before, to: of.after })), tried); // prettier-ignore

/** Puts the old formulas back, each where what the repair wrote still stands. */
export const takeBack = (excel: typeof Excel, cells: readonly MendedCell[]): Promise<Changed> =>
  change(excel, cells.map((of) => ({ of, from: of.after, to: of.before }))); // prettier-ignore
