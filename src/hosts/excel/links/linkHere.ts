import type { BookStyle } from '../../../book/book';
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
import { tablesHere } from './tablesHere';

export type LinkHost = Required<Pick<PaneHost, 'findJoins' | 'link'>>;

const content = ({ formula, value }: Held, look: BookStyle | undefined): string | number | boolean =>
  formula ?? markedAsWords(value ?? '', look?.format);

/** Gives columns what they are to hold, and its look. Text format comes before the words, or 1/3 would become a date. */
function write(context: Excel.RequestContext, columns: readonly ColumnChange[]): void {
  for (const { sheet, area, to, look = {} } of columns) {
    const range = excelRange(context.workbook.worksheets.getItem(sheet), area);
    range.numberFormat = to.map(() => [look.format ?? 'General']);
    range.formulas = to.map((held) => [content(held, look)]);
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

/** Writes the columns where all of them still hold what they held when they were found. */
const writeWhereSame = (excel: typeof Excel, columns: readonly ColumnChange[]): Promise<Written> =>
  excel.run(WHEN_READY, async (context) => {
    const changed = changedColumn(columns, await tablesHere(context));
    if (changed !== undefined) return { changed };
    write(context, columns);
    await context.sync();
    return 'written';
  });

/** Excel does a request action by action and keeps what it did before one fails: all is put back where that can be. */
async function putBack(excel: typeof Excel, columns: readonly ColumnChange[]): Promise<string> {
  try {
    await excel.run(WHEN_READY, async (context) => {
      write(context, reversed(columns));
      await context.sync();
    });
    return UNTOUCHED;
  } catch {
    return HALF_LINKED;
  }
}
const HALF_LINKED = 'Some columns may be written, the others are as before: look for sheets to link again.';

async function link(excel: typeof Excel, { sheet, to, columns }: ChosenWay): Promise<Outcome> {
  const written = await writeWhereSame(excel, columns).catch(async (error: unknown) => ({
    refused: excelRefusal(error, await putBack(excel, columns)),
  }));
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
      .run(WHEN_READY, async (context) => ({ joins: findJoins(SHORT, await tablesHere(context)) }))
      .catch((error: unknown) => ({ refused: excelRefusal(error, UNTOUCHED) })),
  link: (way) => link(excel, way),
});
