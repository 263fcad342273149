import type { Outcome } from '../../pane/host';
import { freeSheetName } from '../../sheets/makePlan';
import type { Area } from '../../sheets/plan';
import { keptAfter, LayFailure, UNTOUCHED, WHEN_READY } from './lay';
import { rangeOf } from './ranges';

/** Of the old name, so that " values (2)" has room behind it. */
const NAME_KEPT = 20;

interface Original {
  readonly sheet: Excel.Worksheet;
  readonly used: Excel.Range;
  readonly area: Area;
  readonly name: string;
  /** Ids of all sheets that were there. */
  readonly before: ReadonlySet<string>;
  readonly widths: readonly number[];
}

/** The sheet in view and what is on it; undefined where it is empty. */
async function lookAt(context: Excel.RequestContext): Promise<Original | undefined> {
  const { worksheets } = context.workbook;
  worksheets.load('items/id,items/name');
  const sheet = worksheets.getActiveWorksheet().load('name,showGridlines');
  const used = sheet.getUsedRangeOrNullObject().load('rowIndex,columnIndex,rowCount,columnCount');
  await context.sync();
  if (used.isNullObject) return undefined;
  const area = { row: used.rowIndex, column: used.columnIndex, rows: used.rowCount, columns: used.columnCount }; // prettier-ignore
  const columns = Array.from({ length: area.columns }, (_, i) =>
    sheet.getRangeByIndexes(0, area.column + i, 1, 1).format.load('columnWidth'),
  );
  await context.sync();
  const taken = worksheets.items.map((one) => one.name);
  return {
    sheet,
    used,
    area,
    name: freeSheetName(`${sheet.name.slice(0, NAME_KEPT).trimEnd()} values`, taken),
    before: new Set(worksheets.items.map(({ id }) => id)),
    widths: columns.map(({ columnWidth }) => columnWidth),
  };
}

/** A new sheet, because Excel clears its undo list when a sheet is copied whole. */
async function copyOf(context: Excel.RequestContext, original: Original): Promise<void> {
  const { sheet, used, area, name, widths } = original;
  const copy = context.workbook.worksheets.add(name);
  const target = rangeOf(copy, area);
  target.copyFrom(used, 'Formats');
  target.copyFrom(used, 'Values');
  for (const [i, width] of widths.entries())
    copy.getRangeByIndexes(0, area.column + i, 1, 1).format.columnWidth = width;
  copy.showGridlines = sheet.showGridlines;
  copy.activate();
  await context.sync();
}

/** Adds a copy of the sheet in view that holds values only. The sheet itself is read, never written. */
export const copyValues = (excel: typeof Excel): Promise<Outcome> =>
  excel.run(WHEN_READY, async (context) => {
    const original = await lookAt(context).catch((error: unknown) => {
      throw new LayFailure(UNTOUCHED, error);
    });
    if (!original)
      return {
        refused: 'The sheet in view is empty. Nothing was copied. Go to a sheet with something on it.',
      };
    const { name, before } = original;
    await copyOf(context, original).catch(async (error: unknown) => {
      throw new LayFailure(await keptAfter(excel, error, name, before), error);
    });
    return {
      done: `“${name}” holds the values as they are now, without formulas or charts. Look it over before you hand it on.`,
    };
  });
