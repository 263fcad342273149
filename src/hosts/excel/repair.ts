import { withNamesMended } from '../../formula/spelling';
import type { MendedCell } from '../../pane/host';
import { address } from '../../formula/address';
import { type Change, changeCells, type Changed } from './changeCells';
import { WHEN_READY } from './lay';
import { findInFormulas, type UsedPart } from './usedCells';

function lostIn({ name, area }: UsedPart, formulas: readonly (readonly unknown[])[]): MendedCell[] {
  return formulas.flatMap((line, r) =>
    line.flatMap((before, c) => {
      const after = typeof before === 'string' ? withNamesMended(before) : undefined;
      const cell = address({ row: area.row + r, column: area.column + c });
      return after === undefined ? [] : [{ sheet: name, cell, before: String(before), after }];
    }),
  );
}

/** Every cell of the workbook with a lost name in it, with what it would hold once mended. Changes nothing. */
export const findLost = (excel: typeof Excel): Promise<MendedCell[]> =>
  excel.run(WHEN_READY, (context) => findInFormulas(context, lostIn));

const change = (excel: typeof Excel, changes: readonly Change[]): Promise<Changed> =>
  excel.run(WHEN_READY, (context) => changeCells(context, changes));

/** Writes the mended formulas, each where the lost one still stands. Entered anew, Excel looks the function up anew. */
export const mendLost = (excel: typeof Excel, cells: readonly MendedCell[]): Promise<Changed> =>
  change(excel, cells.map((of) => ({ of, from: of.before, to: of.after }))); // prettier-ignore

/** Puts the old formulas back, each where what the repair wrote still stands. */
export const takeBack = (excel: typeof Excel, cells: readonly MendedCell[]): Promise<Changed> =>
  change(excel, cells.map((of) => ({ of, from: of.after, to: of.before }))); // prettier-ignore
