/**
 * Formulas that are filled, pasted or typed into many cells at once the library keeps once, by an id: each other cell knows how
 * far it stands from the first. When an edit writes the first one anew the others say something else, or nothing any more. So
 * each of them gets a formula of its own, before it is written: then there is none to follow.
 *
 * For @univerjs/sheets 0.25.1.
 */
import { ICommandService, type ICellData, type Nullable, type Univer } from '@univerjs/core';
import { LexerTreeBuilder } from '@univerjs/engine-formula';
import { SetRangeValuesMutation } from '@univerjs/sheets';

type Written = Record<string, Record<string, Nullable<ICellData>>>;
interface First {
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

const isText = (value: unknown): value is string => typeof value === 'string' && value !== '';

function withOwnFormulas(cells: Written, lexer: LexerTreeBuilder): void {
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

/** From now on, in this workbook. */
export function giveOwnFormulas(univer: Univer): void {
  const injector = univer.__getInjector();
  const lexer = injector.get(LexerTreeBuilder);
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    const { cellValue } = (params ?? {}) as { readonly cellValue?: Written };
    if (id === SetRangeValuesMutation.id && cellValue) withOwnFormulas(cellValue, lexer);
  });
}
