/**
 * A reference that names its own sheet, Plan!D10 on Plan, loses the name in 0.25.1 where an edit adjusts it, and means another
 * cell when its formula is moved to another sheet later. It keeps what it was written with. What adjusts one reference cannot be
 * reached, but what goes through the formulas can.
 *
 * For @univerjs/sheets-formula 0.25.1.
 */
import type { Nullable } from '@univerjs/core';
import { UpdateFormulaController } from '@univerjs/sheets-formula';
import { lex, type Token } from '../../formula/lex';
import { placeOf } from '../../formula/sheetPlace';
import { replaceMethod } from './replaceMethod';

type Lines = Readonly<Record<string, Nullable<Record<string, Nullable<{ f?: string }>>>>>;
/** Formulas by workbook, sheet, row and column. */
type Formulas = Readonly<Record<string, Nullable<Readonly<Record<string, Nullable<Lines>>>>>>;
/** The ids of sheets by workbook and name. */
type SheetIds = Readonly<Record<string, Nullable<Readonly<Record<string, Nullable<string>>>>>>;

const isReference = ({ kind }: Token): boolean => kind === 'cells' || kind === 'lines';

/** An adjusted formula with the name of its own sheet where it stood before. */
function withSheet(before: string, after: string, isOwn: (sheet: string) => boolean): string {
  const [old, adjusted] = [lex(before), lex(after)];
  if (old.length !== adjusted.length) return after;
  return adjusted
    .map((token, i) => {
      const was = old[i]?.before;
      const isLost = was !== undefined && token.before === undefined && isReference(token);
      return isLost && placeOf(was).sheets.every(isOwn) ? was + token.raw : token.raw;
    })
    .join('');
}

replaceMethod<[formulas: Formulas, sheets: SheetIds, edit: unknown], { readonly newFormulaData: Formulas }>(
  UpdateFormulaController.prototype,
  '_getFormulaReferenceMoveInfo',
  (original) =>
    function (formulas, sheets, edit) {
      const adjusted = original.call(this, formulas, sheets, edit);
      for (const [book, ofBook] of Object.entries(adjusted.newFormulaData))
        for (const [id, lines] of Object.entries(ofBook ?? {})) {
          const isOwn = (sheet: string): boolean => sheets[book]?.[sheet] === id;
          for (const [row, line] of Object.entries(lines ?? {}))
            for (const [column, cell] of Object.entries(line ?? {})) {
              const before = formulas[book]?.[id]?.[row]?.[column]?.f;
              if (cell?.f && before?.includes('!')) cell.f = withSheet(before, cell.f, isOwn);
            }
        }
      return adjusted;
    },
);
