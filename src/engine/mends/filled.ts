/**
 * Formulas that were filled are kept once, and each cell knows how far it stands from the first. When a sheet gets another name
 * the library writes the new name into what the first cell says, for every cell: filled down three rows, all three then read
 * the first one's cells; and what is undone comes back so. For an edit each cell's formula is written out for its own place.
 *
 * For @univerjs/sheets-formula 0.25.1.
 */
import type { LexerTreeBuilder } from '@univerjs/engine-formula';
import { UpdateFormulaController } from '@univerjs/sheets-formula';
import { replaceMethod } from './replaceMethod';

interface Kept {
  readonly f: string;
  readonly si?: string;
  /** How many columns and rows the cell stands from the one that the formula was written for. */
  readonly x?: number;
  readonly y?: number;
}
type ByCell = Readonly<Record<string, Readonly<Record<string, Kept | null>>>>;
type Formulas = Readonly<Record<string, Readonly<Record<string, ByCell | null>> | null>>;

interface Inside {
  _formulaDataModel: { getFormulaData(): Formulas };
  readonly _lexerTreeBuilder: LexerTreeBuilder;
}

/** The same things by their keys, each made into another. */
const each = <T, R>(all: Readonly<Record<string, T>>, make: (one: T) => R): Record<string, R> =>
  Object.fromEntries(Object.entries(all).map(([key, one]) => [key, make(one)]));

function writtenOut(formulas: Formulas, lexer: LexerTreeBuilder): Formulas {
  const inPlace = (kept: Kept | null): Kept | null => {
    const { x = 0, y = 0 } = kept ?? {};
    if (!kept || (x === 0 && y === 0)) return kept;
    return { f: lexer.moveFormulaRefOffset(kept.f, x, y), ...(kept.si === undefined ? {} : { si: kept.si }) };
  };
  return each(
    formulas,
    (sheets) => sheets && each(sheets, (cells) => cells && each(cells, (row) => each(row, inPlace))),
  );
}

replaceMethod<[command: unknown], unknown>(
  UpdateFormulaController.prototype,
  '_getUpdateFormula',
  (original) =>
    function (command) {
      const inside = this as Inside;
      const { _formulaDataModel: model, _lexerTreeBuilder: lexer } = inside;
      const getFormulaData = () => writtenOut(model.getFormulaData(), lexer);
      inside._formulaDataModel = Object.create(model, { getFormulaData: { value: getFormulaData } });
      try {
        return original.call(this, command);
      } finally {
        inside._formulaDataModel = model;
      }
    },
);
