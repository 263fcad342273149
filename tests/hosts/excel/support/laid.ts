import { excelHost } from '../../../../src/hosts/excel/paneHost';
import { makePlan } from '../../../../src/sheets/makePlan';
import type { BookCell } from '../../../../src/book/book';
import type { SheetPlan } from '../../../../src/sheets/plan';
import type { Template } from '../../../../src/sheets/template';
import { TEMPLATES } from '../../../../src/sheets/templates';
import { oneOf } from '../../../full';
import { HOST_FILES, type HostFile, type HostOptions, loadOffice } from './office-host';
import { FakeWorkbook } from './fake-workbook';
import type { Sheet } from './sheet';

export const LIGHTS = TEMPLATES.find(({ id }) => id === 'lights-on-set') as Template;

/**
 * Every sheet through one of the library's files, and one sheet through the others; with `full`, which of the files it is
 * changes from sheet to sheet and from run to run.
 */
export const sheetsThroughFiles = (
  full: boolean,
): { readonly file: HostFile; readonly template: Template }[] =>
  TEMPLATES.flatMap((template, i) => {
    const one = full ? (i + oneOf(HOST_FILES.length)) % HOST_FILES.length : 0;
    return HOST_FILES.filter((_, f) => f === one || template === LIGHTS).map((file) => ({ file, template }));
  });

/** The API level that the manifest asks for: tests run on an Excel that has no more. */
export const MANIFEST_LEVEL = '1.9';

/** A workbook with one empty sheet, and the host for it that the pane gets. */
export function openExcel({ excelApi = MANIFEST_LEVEL, ...options }: HostOptions = {}) {
  const workbook = new FakeWorkbook('Sheet1');
  const { Excel } = loadOffice(workbook, { ...options, excelApi });
  return { workbook, excel: Excel, host: excelHost(Excel) };
}

export const planOf = (template: Template, filled: boolean): SheetPlan =>
  makePlan(template, { filled, sheets: ['Sheet1'], tables: [], names: [] });

export const sheetOf = (workbook: FakeWorkbook, name: string): Sheet => {
  const found = workbook.find(name);
  if (!found) throw new Error(`no sheet ${name}`);
  return found;
};

/** What a cell of a plan holds once it is in the workbook: a number in a cell of texts has become one. */
export function held({ formula, value, style }: BookCell): unknown {
  if (formula !== undefined) return formula;
  if (value === null) return undefined;
  return style?.format === '@' ? String(value) : value;
}
