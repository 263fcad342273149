/**
 * A sheet that is copied takes its tables along, and in 0.25.1 each copy has the name of its original: formulas find one of
 * the two, none any more when the copying is undone, and a file may not hold both. A copy gets a name of its own here, and
 * the formulas of the copied sheet mean it, as they mean the cells of that sheet.
 *
 * For @univerjs/sheets and @univerjs/sheets-table 0.25.1.
 */
import { type ICellData, ICommandService, type Injector, type Nullable, type Univer } from '@univerjs/core';
import { IDefinedNamesService } from '@univerjs/engine-formula';
import { CopySheetCommand, InsertSheetMutation, SetRangeValuesMutation } from '@univerjs/sheets';
import { AddSheetTableMutation, TableManager } from '@univerjs/sheets-table';
import { type Renames, renamed } from '../../formula/renamed';

type Cells = Nullable<Record<string, Nullable<Record<string, Nullable<ICellData>>>>>;
interface Params {
  readonly unitId: string;
  readonly subUnitId: string;
  name: string;
  readonly cellValue?: Cells;
  readonly sheet?: { readonly cellData?: Cells };
}
type Names = ReadonlyMap<string, string>;

/** A name with a number behind it that neither a table nor a name of the workbook has. */
function another(name: string, taken: ReadonlySet<string>): string {
  let count = 2;
  while (taken.has(`${name}_${count}`.toLowerCase())) count++;
  return `${name}_${count}`;
}

/** What the tables of a sheet are called in a copy of it. */
function namesFor(injector: Injector, { unitId, subUnitId }: Params): Names {
  const tables = injector.get(TableManager);
  const others = Object.values(injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {});
  const taken = new Set([...tables.getTableList(unitId), ...others].map(({ name }) => name.toLowerCase()));
  const names = new Map<string, string>();
  for (const table of tables.getTablesBySubunitId(unitId, subUnitId)) {
    const name = table.getDisplayName();
    const copy = another(name, taken);
    taken.add(copy.toLowerCase());
    names.set(name, copy);
  }
  return names;
}

function renameIn(cells: Cells, names: Names): void {
  const renames: Renames = {
    sheet: () => undefined,
    name: (name) => names.get(name),
    column: () => undefined,
  };
  for (const line of Object.values(cells ?? {}))
    for (const cell of Object.values(line ?? {})) if (cell?.f) cell.f = renamed(cell.f, renames);
}

const NONE: Names = new Map();

/** Has each table that is copied along with its sheet get a name of its own. */
export function nameCopiedTables(univer: Univer): void {
  const injector = univer.__getInjector();
  const commands = injector.get(ICommandService);
  let names = NONE;
  commands.beforeCommandExecuted(({ id, params: given }) => {
    const params = (given ?? {}) as Params;
    if (id === CopySheetCommand.id) names = injector.has(TableManager) ? namesFor(injector, params) : NONE;
    if (names.size === 0) return;
    if (id === InsertSheetMutation.id) renameIn(params.sheet?.cellData, names);
    // A large sheet is copied in pieces.
    if (id === SetRangeValuesMutation.id) renameIn(params.cellValue, names);
    if (id === AddSheetTableMutation.id) params.name = names.get(params.name) ?? params.name;
  });
  commands.onCommandExecuted(({ id }) => {
    if (id === CopySheetCommand.id) names = NONE;
  });
}
