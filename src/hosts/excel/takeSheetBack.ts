import type { Outcome } from '../../pane/host';
import { address } from '../../formula/address';
import { speaksOf } from '../../formula/mentions';
import { NOT_BACK, takenAway } from '../../pane/said';
import { UNDO_EMPTIED, WHEN_READY } from './lay';
import { askState, type SheetMark } from './sheetMark';
import { findInFormulas } from './usedCells';

/** Where another sheet or a name speaks of a sheet: it would show #REF! without it. */
async function useElsewhere(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  { name }: SheetMark,
): Promise<Outcome | undefined> {
  const { names } = context.workbook;
  names.load('items/name,items/formula');
  sheet.tables.load('items/name');
  await context.sync();
  const tables = sheet.tables.items.map((table) => table.name);
  const speaks = (formula: unknown): boolean =>
    typeof formula === 'string' && formula.startsWith('=') && speaksOf(formula, name, tables);
  const named = names.items.find(({ formula }) => speaks(formula));
  if (named) return NOT_BACK.named(named.name);
  const [cell] = await findInFormulas(context, (part, formulas) =>
    part.name === name
      ? []
      : formulas.flatMap((line, r) =>
          line.flatMap((formula, c) =>
            speaks(formula)
              ? [`${address({ row: part.area.row + r, column: part.area.column + c })} on “${part.name}”`]
              : [],
          ),
        ),
  );
  return cell === undefined ? undefined : NOT_BACK.usedIn(cell);
}

/**
 * Takes a sheet away that the pane has made, if it is as it was left and nothing else needs it. Excel's own undo does not
 * reach back over every way of making one.
 */
export const takeSheetBack = (excel: typeof Excel, mark: SheetMark): Promise<Outcome> =>
  excel.run(WHEN_READY, async (context) => {
    const { name } = mark;
    const sheet = context.workbook.worksheets.getItemOrNullObject(mark.id).load('name');
    await context.sync();
    if (sheet.isNullObject) return NOT_BACK.gone(name);
    const state = askState(sheet, mark.area);
    await context.sync();
    if (state() !== mark.state) return NOT_BACK.changed(name);
    const use = await useElsewhere(context, sheet, mark);
    if (use) return use;
    sheet.delete();
    await context.sync();
    return { done: `${takenAway(name)} ${UNDO_EMPTIED}` };
  });
