import type { Outcome } from '../../pane/host';
import { address } from '../../formula/address';
import { speaksOf } from '../../formula/speaksOf';
import { NOT_BACK, takenAway } from '../../pane/sentences';
import { UNDO_EMPTIED, WHEN_READY } from './lay';
import { askState, type SheetMark } from './sheetMark';
import { findInFormulas } from './usedCells';

/** A sheet that was made, and is in the workbook under its name. */
interface Made {
  readonly mark: SheetMark;
  readonly sheet: Excel.Worksheet;
}

/** Where another sheet or a name speaks of sheets that go together: it would show #REF! without them. */
async function useElsewhere(
  context: Excel.RequestContext,
  made: readonly Made[],
): Promise<Outcome | undefined> {
  const { names, worksheets } = context.workbook;
  names.load('items/name,items/formula');
  for (const { sheet } of made) sheet.tables.load('items/name');
  worksheets.load('items/id');
  await context.sync();
  const going = made.map(({ mark: { id, name }, sheet }) => ({
    id,
    name,
    tables: sheet.tables.items.map((table) => table.name),
  }));
  // Names that hold on one sheet alone are not among those of the workbook.
  const elsewhere = worksheets.items.filter(({ id }) => going.every((each) => each.id !== id));
  for (const other of elsewhere) other.names.load('items/name,items/formula');
  await context.sync();
  const speaks = (formula: unknown): boolean =>
    typeof formula === 'string' &&
    formula.startsWith('=') &&
    going.some(({ name, tables }) => speaksOf(formula, name, tables));
  const all = [names, ...elsewhere.map((other) => other.names)].flatMap(({ items }) => items);
  const named = all.find(({ formula }) => speaks(formula));
  if (named) return NOT_BACK.named(named.name);
  const [cell] = await findInFormulas(context, (part, formulas) =>
    going.some(({ name }) => part.name === name)
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

/** The first of the sheets that is not as it was left. */
async function firstChanged(
  context: Excel.RequestContext,
  made: readonly Made[],
): Promise<Outcome | undefined> {
  const asked = made.map(({ mark, sheet }) => ({ mark, now: askState(sheet, mark.area) }));
  await context.sync();
  const changed = asked.find(({ mark, now }) => now() !== mark.state);
  return changed && NOT_BACK.changed(changed.mark.name);
}

/**
 * Takes sheets away that the pane has made in one step, if all of them are as they were left and nothing else needs them. Excel's own
 * undo does not reach back over every way of making one.
 *
 * @param done - what is said then
 */
export const takeSheetsBack = (
  excel: typeof Excel,
  marks: readonly SheetMark[],
  done: string,
): Promise<Outcome> =>
  excel.run(WHEN_READY, async (context) => {
    const { worksheets } = context.workbook;
    const made = marks.map((mark) => ({
      mark,
      sheet: worksheets.getItemOrNullObject(mark.id).load('name'),
    }));
    await context.sync();
    const gone = made.find(({ sheet }) => sheet.isNullObject);
    if (gone) return NOT_BACK.gone(gone.mark.name);
    const refused = (await firstChanged(context, made)) ?? (await useElsewhere(context, made));
    // Last of all once more: looking through the workbook takes its time, and others may be at work in it.
    const left = refused ?? (await firstChanged(context, made));
    if (left) return left;
    // The last first, which may look up in those before it.
    for (const { sheet } of [...made].reverse()) sheet.delete();
    await context.sync();
    return { done: `${done} ${UNDO_EMPTIED}` };
  });

/** The same of one sheet. */
export const takeSheetBack = (excel: typeof Excel, mark: SheetMark): Promise<Outcome> =>
  takeSheetsBack(excel, [mark], takenAway(mark.name));
