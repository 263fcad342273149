import { withNamesMended } from '../../formula/spelling';
import type { MendedCell } from '../../pane/host';
import { address } from '../../formula/address';
import { WHEN_READY } from './lay';
import { batches, findInFormulas, type UsedPart } from './usedCells';

/** Each cell that is written is an object of its own on the way to Excel. */
const WRITES_AT_ONCE = 500;

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

/** What a cell should hold, and what it must hold before. */
interface Change {
  readonly of: MendedCell;
  readonly from: string;
  readonly to: string;
}

export interface Changed {
  /** What was written, with what Excel makes of it in `after`. */
  readonly done: readonly MendedCell[];
  /** Cells that hold something else by now, or whose sheet is gone: they were left. */
  readonly left: readonly MendedCell[];
}

async function changeSome(context: Excel.RequestContext, changes: readonly Change[]): Promise<Changed> {
  const names = [...new Set(changes.map(({ of }) => of.sheet))];
  const sheets = new Map(
    names.map((name) => [name, context.workbook.worksheets.getItemOrNullObject(name).load('name')]),
  );
  await context.sync();
  const there = changes.flatMap((change) => {
    const sheet = sheets.get(change.of.sheet);
    if (!sheet || sheet.isNullObject) return [];
    return [{ change, range: sheet.getRange(change.of.cell).load('formulas') }];
  });
  await context.sync();
  const same = there.filter(({ change, range }) => range.formulas[0]?.[0] === change.from);
  for (const { change, range } of same) {
    range.formulas = [[change.to]];
    range.load('formulas');
  }
  await context.sync();
  const written = new Map(same.map(({ change, range }) => [change, String(range.formulas[0]?.[0])]));
  return {
    done: [...written].map(([{ of }, after]) => ({ ...of, after })),
    left: changes.filter((change) => !written.has(change)).map(({ of }) => of),
  };
}

const change = (excel: typeof Excel, changes: readonly Change[]): Promise<Changed> =>
  excel.run(WHEN_READY, async (context) => {
    const done: MendedCell[] = [];
    const left: MendedCell[] = [];
    for (const batch of batches(changes, () => 1, WRITES_AT_ONCE)) {
      const some = await changeSome(context, batch);
      done.push(...some.done);
      left.push(...some.left);
    }
    return { done, left };
  });

/** Writes the mended formulas, each where the lost one still stands. Entered anew, Excel looks the function up anew. */
export const mendLost = (excel: typeof Excel, cells: readonly MendedCell[]): Promise<Changed> =>
  change(excel, cells.map((of) => ({ of, from: of.before, to: of.after }))); // prettier-ignore

/** Puts the old formulas back, each where what the repair wrote still stands. */
export const takeBack = (excel: typeof Excel, cells: readonly MendedCell[]): Promise<Changed> =>
  change(excel, cells.map((of) => ({ of, from: of.after, to: of.before }))); // prettier-ignore
