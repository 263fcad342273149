import { createRequire } from 'node:module';
import type * as Core from '@univerjs/core';
import type * as Facade from '@univerjs/core/facade';
import type * as Engine from '@univerjs/engine-formula';
import type * as Sheets from '@univerjs/sheets';
import type * as SheetsFormula from '@univerjs/sheets-formula';
import { snapshot, type TestCell } from '../book';

/**
 * The engine as its makers ship it. Its packages have a second build, which `require` loads and nothing of ours reaches: it
 * stands in this process beside the mended one.
 */
const load = createRequire(import.meta.url);
const packages = () => ({
  core: load('@univerjs/core') as typeof Core,
  facade: load('@univerjs/core/facade') as typeof Facade,
  engine: load('@univerjs/engine-formula') as typeof Engine,
  sheets: load('@univerjs/sheets') as typeof Sheets,
  formula: load('@univerjs/sheets-formula') as typeof SheetsFormula,
});

type Plain = number | string | boolean | null | { readonly error: string };

/** What each formula gives in its own cell, all of them in one workbook behind the data of its first sheet. */
export async function unmended(sheets: readonly (readonly (readonly TestCell[])[])[]): Promise<Plain[][][]> {
  const { core, facade, engine, sheets: sheetsPackage, formula } = packages();
  for (const name of ['sheets', 'engine-formula', 'sheets-formula']) load(`@univerjs/${name}/facade`);
  const univer = new core.Univer({ locale: core.LocaleType.EN_US, locales: { [core.LocaleType.EN_US]: {} } });
  univer.registerPlugin(engine.UniverFormulaEnginePlugin);
  univer.registerPlugin(sheetsPackage.UniverSheetsPlugin);
  univer.registerPlugin(formula.UniverSheetsFormulaPlugin, {
    initialFormulaComputing: formula.CalculationMode.NO_CALCULATION,
  });
  const api = facade.FUniver.newAPI(univer);
  const book = api.createWorkbook(
    snapshot(Object.fromEntries(sheets.map((rows, i) => [`Sheet${i}`, rows]))) as Core.IWorkbookData,
  );
  const model = univer.__getInjector().get(engine.FormulaDataModel);
  model.getHiddenRowsFiltered = () => ({});
  const calculation = api.getFormula();
  const applied = calculation.onCalculationResultApplied();
  calculation.executeCalculation();
  await applied;
  const spills = model.getArrayFormulaCellData()?.[book.getId()];
  const given = sheets.map((rows, i) => {
    const cells = book.getSheetByName(`Sheet${i}`)?.getRange('A1:BF60').getCellDatas() ?? [];
    return cells.map((row, r) =>
      row.map((cell, c): Plain => {
        const stored = cell?.v == null ? spills?.[`Sheet${i}`]?.[r]?.[c] : cell;
        const value = stored?.v;
        if (value === null || value === undefined) return null;
        if (engine.ERROR_TYPE_SET.has(value as never)) return { error: String(value) };
        return stored?.t === core.CellValueType.BOOLEAN ? Boolean(value) : value;
      }),
    );
  });
  univer.dispose();
  return given;
}
