import { CellValueType, type IWorkbookData, LocaleType, type Nullable } from '@univerjs/core';
import {
  ERROR_TYPE_SET,
  ErrorType,
  FormulaDataModel,
  IFormulaRuntimeService,
  UniverFormulaEnginePlugin,
} from '@univerjs/engine-formula';
import { SheetSkeletonService, UniverSheetsPlugin } from '@univerjs/sheets';
import { CalculationMode, UniverSheetsFormulaPlugin } from '@univerjs/sheets-formula';
import { UniverSheetsNumfmtPlugin } from '@univerjs/sheets-numfmt';
import { UniverSheetsTablePlugin } from '@univerjs/sheets-table';
import type { FRange } from '@univerjs/sheets/facade';
import '@univerjs/sheets/facade';
import '@univerjs/engine-formula/facade';
import '@univerjs/sheets-formula/facade';
import '@univerjs/sheets-numfmt/facade';
import '@univerjs/sheets-table/facade';
import './patches';
import { type CellError, cellError, type ErrorCode } from '../formula/errors';
import { calculation } from './calculation';
import { CIRCLE } from './circles';
import { createUniver } from './create';
import { hear } from './failures';
import { filterByTables } from './filter/filteredRows';
import { mendEdits, withOwnFormulas } from './mends/edits';
import { executors, type FailureReport } from './functions';
import { indirect } from './mends/indirect';

/** What a cell holds: null where it is empty; an error with its sentence where a SWEEP function gave it. */
export type EngineValue = number | string | boolean | null | CellError;

interface StoredCell {
  readonly v?: unknown;
  readonly t?: unknown;
}

/** Where each row lies on a page, which nobody asks: a sheet of a million rows takes longer to lay out than to calculate. */
const NO_LAYOUT = [SheetSkeletonService, { useValue: {} }];

/** Of the workbooks that were opened. */
let opened = 0;

/**
 * A workbook without a page, for Node: the fewest plugins that calculate. Nothing is calculated before `calculate()`.
 * In the snapshot, texts carry `t: CellValueType.STRING`: without it the engine reads "1/60" as a date.
 *
 * @param lookFrom - the sheet that INDIRECT means where its text names none, by that of its formula: else it is the same
 */
export function headless(snapshot: Partial<IWorkbookData>, lookFrom?: (sheetId: string) => string) {
  const failures = new Map<string, string>();
  const key = (sheetId: string, row: number, column: number) => `${sheetId}!${row},${column}`;
  const note = (report: FailureReport) => {
    const cell = key(report.sheetId, report.row, report.column);
    if ('cleared' in report) failures.delete(cell);
    else failures.set(cell, report.message);
  };
  const { univer, api } = createUniver({ locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} } }, [
    {
      plugins: [
        [
          UniverFormulaEnginePlugin,
          { function: [...executors(note), ...(lookFrom ? [indirect(lookFrom)] : [])] },
        ],
        [UniverSheetsPlugin, { override: [NO_LAYOUT] }],
        [UniverSheetsFormulaPlugin, { initialFormulaComputing: CalculationMode.NO_CALCULATION }],
        UniverSheetsNumfmtPlugin,
        UniverSheetsTablePlugin,
      ],
    },
  ]);
  mendEdits(univer);
  // What the engine keeps of formulas it keeps for the whole process, by the workbook's id: two of one id take each other's.
  const id = `${++opened}!`;
  const workbook = api.createWorkbook({ ...withOwnFormulas(snapshot), id } as IWorkbookData);
  hear(univer.__getInjector().get(IFormulaRuntimeService), note);
  const model = univer.__getInjector().get(FormulaDataModel);
  const calculate = calculation(univer.__getInjector());
  filterByTables(univer);

  const place = (sheetName: string, a1: string) => {
    const sheet = workbook.getSheetByName(sheetName);
    if (!sheet) throw new Error(`There is no sheet "${sheetName}".`);
    return { sheet, sheetId: sheet.getSheetId(), range: sheet.getRange(a1) };
  };

  /** The exact values of a range, spilled cells included: the facade's own are formatted, rounded or lack them. */
  const valuesOf = (sheetId: string, range: FRange): EngineValue[][] => {
    const spilled = model.getArrayFormulaCellData()?.[workbook.getId()]?.[sheetId];
    const [top, left] = [range.getRow(), range.getColumn()];
    return range.getCellDatas().map((cells, i) =>
      cells.map((cell, j) => {
        const [row, column] = [top + i, left + j];
        const stored: Nullable<StoredCell> = cell?.v == null ? spilled?.[row]?.[column] : cell;
        return valueOf(stored, failures.get(key(sheetId, row, column)));
      }),
    );
  };

  return {
    workbook,

    /** Whether formulas went round in a circle when it was last calculated: then what they give is not to be trusted. */
    isCircular: () => [...failures.values()].includes(CIRCLE),

    /** Calculates every formula of the workbook. */
    calculate: () => calculate('all'),

    /** Calculates what follows from the edits since, as the workbench does; once all of it has been calculated. */
    calculateChanged: () => calculate('changed'),

    /** The values of a range such as "A1:B3". */
    read(sheetName: string, a1: string): EngineValue[][] {
      const { sheetId, range } = place(sheetName, a1);
      return valuesOf(sheetId, range);
    },

    /** All that the formula in a cell gives: that cell, or the cells it spills over. */
    answer(sheetName: string, a1: string): EngineValue[][] {
      const { sheet, sheetId, range } = place(sheetName, a1);
      const spills = model.getArrayFormulaRange()?.[workbook.getId()]?.[sheetId];
      const spill = spills?.[range.getRow()]?.[range.getColumn()];
      const blocked = range.getCellData()?.v === ErrorType.SPILL;
      return valuesOf(sheetId, spill && !blocked ? sheet.getRange(spill) : range);
    },

    dispose: () => univer.dispose(),
  };
}

function valueOf(cell: Nullable<StoredCell>, message: string | undefined): EngineValue {
  const value = cell ? cell.v : undefined;
  if (value === null || value === undefined) return null;
  if (ERROR_TYPE_SET.has(value as never)) return cellError(value as ErrorCode, message);
  if (cell?.t === CellValueType.BOOLEAN) return Boolean(value);
  return value as EngineValue;
}
