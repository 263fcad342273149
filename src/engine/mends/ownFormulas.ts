/**
 * Formulas that are filled, pasted or typed into many cells at once the library keeps once, by an id: each other cell knows how
 * far it stands from the first. When an edit writes the first one anew the others say something else, or nothing any more. So
 * each of them gets a formula of its own before it is written, and in a workbook that was stored otherwise before it is opened.
 *
 * For @univerjs/sheets 0.25.1.
 */
import {
  ICommandService,
  type ICellData,
  type IWorkbookData,
  type Nullable,
  type Univer,
} from '@univerjs/core';
import { LexerTreeBuilder } from '@univerjs/engine-formula';
import { SetRangeValuesMutation } from '@univerjs/sheets';

type Written = Readonly<Record<string, Readonly<Record<string, Nullable<ICellData>>>>>;
interface First {
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

const lexer = new LexerTreeBuilder();

const isText = (value: unknown): value is string => typeof value === 'string' && value !== '';

function separate(cells: Written): void {
  const all = Object.entries(cells).flatMap(([row, line]) =>
    Object.entries(line ?? {}).flatMap(([column, cell]) =>
      cell && isText(cell.si) ? [{ cell, row: Number(row), column: Number(column), id: cell.si }] : [],
    ),
  );
  const firsts = new Map<string, First>();
  for (const { cell, row, column, id } of all)
    if (isText(cell.f) && !firsts.has(id)) firsts.set(id, { formula: cell.f, row, column });
  for (const { cell, row, column, id } of all) {
    const first = firsts.get(id);
    // what stands elsewhere keeps its id
    if (!first) continue;
    if (!isText(cell.f))
      cell.f = lexer.moveFormulaRefOffset(first.formula, column - first.column, row - first.row);
    cell.si = null;
  }
}

/** A workbook before it is opened. */
export function withOwnFormulas<T extends Partial<IWorkbookData>>(snapshot: T): T {
  for (const { cellData } of Object.values(snapshot.sheets ?? {})) separate((cellData ?? {}) as Written);
  return snapshot;
}

/** From now on, in each workbook that is open. */
export function giveOwnFormulas(univer: Univer): void {
  univer
    .__getInjector()
    .get(ICommandService)
    .beforeCommandExecuted(({ id, params }) => {
      const { cellValue } = (params ?? {}) as { readonly cellValue?: Written };
      if (id === SetRangeValuesMutation.id && cellValue) separate(cellValue);
    });
}
