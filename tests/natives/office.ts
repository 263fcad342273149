import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type CellValue, Workbook } from '@cj-tech-master/excelts';
import { address } from '../../src/formula/address';
import { asStored } from '../../src/formula/spelling';
import type { TestCell } from '../engine/book';
import type { Answer } from './answers';
import { placeOf, sheetsOf } from './places';

/** Whether a formula has cells or lists in it, over which LibreOffice goes only in a formula of its matrices. */
const GOES_OVER_CELLS = /[:{]/;

function cellValue(cell: TestCell, a1: string): CellValue {
  if (typeof cell !== 'string' || !cell.startsWith('=')) return cell;
  const formula = asStored(cell);
  return GOES_OVER_CELLS.test(cell) ? { formula, shareType: 'array', ref: a1 } : { formula };
}

function workbookOf(formulas: readonly string[]): Workbook {
  const book = new Workbook();
  for (const [name, rows] of Object.entries(sheetsOf(formulas))) {
    const sheet = book.addWorksheet(name);
    rows.forEach((cells, row) =>
      cells.forEach((cell, column) => {
        const a1 = address({ row, column });
        if (cell !== null) sheet.getCell(a1).value = cellValue(cell, a1);
      }),
    );
  }
  return book;
}

function answerOf(result: unknown): Answer {
  // a formula that gives "" is stored without a value
  if (result === undefined) return '';
  if (typeof result === 'object' && result !== null && 'error' in result)
    return { error: String(result.error) };
  return result as Answer;
}

/** LibreOffice with settings of its own, so that one that is open does not answer instead. */
function convert(file: string, work: string): string {
  const back = join(work, 'back');
  const settings = pathToFileURL(join(work, 'settings')).href;
  const asked = ['--headless', '--convert-to', 'xlsx', '--outdir', back, file];
  const { status, error, stderr } = spawnSync('soffice', [`-env:UserInstallation=${settings}`, ...asked], {
    encoding: 'utf8',
  });
  if (error || status !== 0) throw new Error(`LibreOffice cannot be run here: ${error?.message ?? stderr}`);
  return join(back, 'asked.xlsx');
}

/** What each formula gives in its cell by LibreOffice, all of them in one workbook and one process. */
export async function answersOfOffice(formulas: readonly string[]): Promise<Answer[]> {
  if (formulas.length === 0) return [];
  const work = mkdtempSync(join(tmpdir(), 'sweeptable-'));
  try {
    const asked = join(work, 'asked.xlsx');
    await workbookOf(formulas).xlsx.writeFile(asked);
    const book = new Workbook();
    await book.xlsx.load(readFileSync(convert(asked, work)));
    return formulas.map((formula, i) => {
      const { sheet, a1 } = placeOf(i);
      const cell = book.getWorksheet(sheet)?.getCell(a1);
      if (!cell?.formula) throw new Error(`LibreOffice lost the formula ${formula}`);
      return answerOf(cell.result);
    });
  } finally {
    rmSync(work, { recursive: true });
  }
}
