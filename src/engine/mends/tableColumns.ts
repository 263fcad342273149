/**
 * Where a column of a sheet is deleted that a table has, the library (0.25.1) writes the formulas of that sheet twice: adjusted
 * to the deletion, and then as they were, but that what named the table's column is #REF!. So all others go on naming the
 * cells that were there before. Here both are done at once, and nothing is written behind it.
 *
 * For @univerjs/sheets, @univerjs/sheets-formula and @univerjs/sheets-table 0.25.1.
 */
import { ICommandService, type Injector, type IRange, type Nullable, type Univer } from '@univerjs/core';
import { RemoveColByRangeCommand, RemoveColCommand } from '@univerjs/sheets';
import { UpdateFormulaController } from '@univerjs/sheets-formula';
import { TableManager } from '@univerjs/sheets-table';
import { lex, type Token } from '../../formula/lex';
import { replaceMethod } from './replaceMethod';

type Lines = Record<string, Nullable<Record<string, Nullable<{ f?: string }>>>>;
/** Formulas by workbook, sheet, row and column. */
type Formulas = Record<string, Nullable<Record<string, Nullable<Lines>>>>;
interface Edit {
  readonly type: number;
  readonly unitId: string;
  readonly sheetId: string;
  readonly range?: IRange;
}
/** Headings of the columns that a table loses; all of it where there are none left. */
type Lost = ReadonlyMap<string, ReadonlySet<string> | 'all'>;

const REMOVES_COLUMNS = 6;
const REMOVES_TABLE_COLUMNS = 'sheet.command.table-remove-col';

function lostBy({ unitId, sheetId, range }: Edit, tables: TableManager): Lost {
  const lost = new Map<string, ReadonlySet<string> | 'all'>();
  if (!range) return lost;
  for (const table of tables.getTablesBySubunitId(unitId, sheetId)) {
    const { startColumn, endColumn } = table.getRange();
    const headings = table.getTableInfo().columns.map(({ displayName }) => displayName);
    const gone = headings.filter(
      (_, i) => startColumn + i >= range.startColumn && startColumn + i <= range.endColumn,
    );
    const isAll = range.startColumn <= startColumn && range.endColumn >= endColumn;
    if (gone.length > 0) lost.set(table.getDisplayName(), isAll ? 'all' : new Set(gone));
  }
  return lost;
}

/** Whether a piece of a formula names what is lost. In brackets a heading stands alone or in brackets of its own. */
function namesLost(token: Token, lost: Lost): boolean {
  if (token.kind === 'name') return lost.get(token.name) === 'all';
  if (token.kind !== 'columns' || token.table === undefined) return false;
  const gone = lost.get(token.table);
  if (!gone || gone === 'all') return gone === 'all';
  const headings = token.inside.match(/[^[\]]+/g)?.map((heading) => heading.replace(/^@/, '').trim()) ?? [];
  return headings.some((heading) => gone.has(heading));
}

const without = (formula: string, lost: Lost): string =>
  lex(formula)
    .map((token) => (namesLost(token, lost) ? '#REF!' : token.raw))
    .join('');

replaceMethod<[formulas: Formulas, sheets: unknown, edit: Edit], { readonly newFormulaData: Formulas }>(
  UpdateFormulaController.prototype,
  '_getFormulaReferenceMoveInfo',
  (original) =>
    function (formulas, sheets, edit) {
      const adjusted = original.call(this, formulas, sheets, edit);
      const { _injector: injector } = this as { readonly _injector: Injector };
      if (edit.type !== REMOVES_COLUMNS || !injector.has(TableManager)) return adjusted;
      const lost = lostBy(edit, injector.get(TableManager));
      if (lost.size === 0) return adjusted;
      const { unitId } = edit;
      const written = (adjusted.newFormulaData[unitId] ??= {});
      for (const [id, lines] of Object.entries(formulas[unitId] ?? {}))
        for (const [row, line] of Object.entries(lines ?? {}))
          for (const [column, cell] of Object.entries(line ?? {})) {
            const formula = written[id]?.[row]?.[column]?.f ?? cell?.f ?? '';
            const left = without(formula, lost);
            if (left !== formula) ((written[id] ??= {})[row] ??= {})[column] = { f: left };
          }
      return adjusted;
    },
);

/** Whether columns of a sheet are being deleted, with those of its tables. */
let isOfSheet = false;

replaceMethod<[command: { readonly id: string }], { readonly undos: unknown[]; readonly redos: unknown[] }>(
  UpdateFormulaController.prototype,
  '_getUpdateFormula',
  (original) =>
    function (command) {
      const isDone = isOfSheet && command.id === REMOVES_TABLE_COLUMNS;
      return isDone ? { undos: [], redos: [] } : original.call(this, command);
    },
);

/** Hears of the deletion of columns, from its beginning to its end. */
export function hearColumnsRemoved(univer: Univer): void {
  const commands = univer.__getInjector().get(ICommandService);
  const isRemoval = (id: string): boolean => id === RemoveColCommand.id || id === RemoveColByRangeCommand.id;
  commands.beforeCommandExecuted(({ id }) => {
    if (isRemoval(id)) isOfSheet = true;
  });
  commands.onCommandExecuted(({ id }) => {
    if (isRemoval(id)) isOfSheet = false;
  });
}
