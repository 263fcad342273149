import type { Outcome } from '../../pane/host';
import { address } from '../../formula/address';
import { speaksOf } from '../../formula/speaksOf';
import { NOT_BACK, takenAway } from '../../pane/sentences';
import { UNDO_EMPTIED, WHEN_READY } from './lay';
import { askState, type SheetMark } from './sheetMark';
import { findInFormulas } from './usedCells';

/** Where another sheet or a name speaks of a sheet: it would show #REF! without it. */
async function useElsewhere(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  mark: SheetMark,
): Promise<Outcome | undefined> {
  const { name } = mark;
  const { names, worksheets } = context.workbook;
  names.load('items/name,items/formula');
  sheet.tables.load('items/name');
  worksheets.load('items/id');
  await context.sync();
  // Names that hold on one sheet alone are not among those of the workbook.
  const elsewhere = worksheets.items.filter(({ id }) => id !== mark.id);
  for (const other of elsewhere) other.names.load('items/name,items/formula');
  await context.sync();
  const tables = sheet.tables.items.map((table) => table.name);
  const speaks = (formula: unknown): boolean =>
    typeof formula === 'string' && formula.startsWith('=') && speaksOf(formula, name, tables);
  const all = [names, ...elsewhere.map((other) => other.names)].flatMap(({ items }) => items);
  const named = all.find(({ formula }) => speaks(formula));
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

async function hasChanged(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  { area, state }: SheetMark,
): Promise<boolean> {
  const now = askState(sheet, area);
  await context.sync();
  return now() !== state;
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
    if (await hasChanged(context, sheet, mark)) return NOT_BACK.changed(name);
    const use = await useElsewhere(context, sheet, mark);
    if (use) return use;
    // Last of all once more: looking through the workbook takes its time, and others may be at work in it.
    if (await hasChanged(context, sheet, mark)) return NOT_BACK.changed(name);
    sheet.delete();
    await context.sync();
    return { done: `${takenAway(name)} ${UNDO_EMPTIED}` };
  });
