import type { BookStyle } from '../../../book/book';
import { at } from '../../../exposure/core/at';
import { saysTheSame } from '../../../formula/same';
import type { ChosenWay, Outcome, PaneHost } from '../../../pane/host';
import { joinChanged, linkedTo, unlinked, UNTOUCHED } from '../../../pane/sentences';
import { findJoins } from '../../../sheets/links/findJoins';
import { changedColumn, type ColumnChange } from '../../../sheets/links/linkColumns';
import type { Held } from '../../../sheets/links/tableHere';
import { SHORT } from '../../../sheets/offeredTemplates';
import { markedAsWords } from '../cells';
import { WHEN_READY } from '../lay';
import { redress } from '../looks';
import { excelRange } from '../ranges';
import { excelRefusal } from '../refusals';
import { foundHere } from './foundHere';

export type LinkHost = Required<Pick<PaneHost, 'findJoins' | 'link'>>;

const content = ({ formula, value }: Held, look: BookStyle | undefined): string | number | boolean =>
  formula ?? markedAsWords(value ?? '', look?.format);

const rangeOf = (context: Excel.RequestContext, { sheet, area }: ColumnChange): Excel.Range =>
  excelRange(context.workbook.worksheets.getItem(sheet), area);

/**
 * Gives columns what they are to hold, and its look. Text format comes before the words, or 1/3 would become a date.
 * @param isMeant - whether a row is written; where not, Excel leaves it as it is
 */
function write(
  context: Excel.RequestContext,
  columns: readonly ColumnChange[],
  isMeant: (column: number, row: number) => boolean = () => true,
): void {
  for (const [i, column] of columns.entries()) {
    const { area, to, look = {} } = column;
    const range = rangeOf(context, column);
    range.numberFormat = to.map(() => [look.format ?? 'General']);
    range.formulas = to.map((held, row) => [isMeant(i, row) ? content(held, look) : null]);
    redress(range.format, look, area);
  }
}

/** The same columns the other way round. */
const reversed = (columns: readonly ColumnChange[]): ColumnChange[] =>
  columns.map((column) => ({
    ...column,
    before: column.to,
    to: column.before,
    look: column.lookBefore,
    lookBefore: column.look,
  }));

type Written = { readonly changed: string } | 'written';

/**
 * Writes the columns where all of them still hold what they held when they were found.
 * @param begin - is called before the first of them is written
 */
const writeWhereSame = (
  excel: typeof Excel,
  columns: readonly ColumnChange[],
  begin: () => void = () => {},
): Promise<Written> =>
  excel.run(WHEN_READY, async (context) => {
    const changed = changedColumn(columns, await foundHere(context));
    if (changed !== undefined) return { changed };
    begin();
    write(context, columns);
    await context.sync();
    return 'written';
  });

const holds = (now: unknown, { formula, value }: Held, table: string): boolean =>
  formula === undefined ? now === (value ?? '') : typeof now === 'string' && saysTheSame(now, formula, table);

/**
 * Excel does a request action by action and keeps what it did before one fails: all that we wrote is put back where that can be.
 * A cell that holds something else is somebody's.
 */
async function putBack(excel: typeof Excel, columns: readonly ColumnChange[]): Promise<string> {
  try {
    await excel.run(WHEN_READY, async (context) => {
      const now = columns.map((column) => rangeOf(context, column).load('formulas'));
      await context.sync();
      const isOurs = (c: number, row: number): boolean => {
        const { to, table } = at(columns, c);
        return holds(at(now, c).formulas[row]?.[0], at(to, row), table);
      };
      write(context, reversed(columns), isOurs);
      await context.sync();
    });
    return UNTOUCHED;
  } catch {
    return HALF_LINKED;
  }
}
const HALF_LINKED = 'Some columns may be written, the others are as before: look for sheets to link again.';

async function link(excel: typeof Excel, { sheet, to, columns }: ChosenWay): Promise<Outcome> {
  let hasBegun = false;
  const written = await writeWhereSame(excel, columns, () => (hasBegun = true)).catch(
    async (error: unknown) => ({
      refused: excelRefusal(error, hasBegun ? await putBack(excel, columns) : UNTOUCHED),
    }),
  );
  if (written !== 'written') return 'changed' in written ? joinChanged(written.changed) : written;
  const names = columns.filter(({ follows }) => !follows).map(({ column }) => column);
  return {
    done: linkedTo(sheet, names, to === 'typed' ? undefined : to.sheet),
    takeBack: async () => {
      try {
        const back = await writeWhereSame(excel, reversed(columns));
        return back === 'written' ? { done: unlinked(sheet) } : joinChanged(back.changed);
      } catch (error) {
        return { refused: excelRefusal(error, HALF_LINKED) };
      }
    },
  };
}

/** Finding sheets that were inserted apart and joining them, as the pane asks for it. */
export const linkHost = (excel: typeof Excel): LinkHost => ({
  findJoins: () =>
    excel
      .run(WHEN_READY, async (context) => ({ joins: findJoins(SHORT, await foundHere(context)) }))
      .catch((error: unknown) => ({ refused: excelRefusal(error, UNTOUCHED) })),
  link: (way) => link(excel, way),
});
