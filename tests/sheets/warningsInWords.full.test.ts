import { describe, expect, test } from 'vitest';
import type { BookCell, BookSheet } from '../../src/book/book';
import { usedArea } from '../../src/book/cells';
import { shifter } from '../../src/formula/shift';
import { planAlone } from '../../src/sheets/makePlan';
import { TEMPLATES } from '../../src/sheets/templates';
import { liveValues } from './live';

/** What somebody types who means something else: each input refuses it, doubts it or leaves it out. */
const NONSENSE = 'banana';
const typed = (sheet: BookSheet): BookSheet => ({
  ...sheet,
  cells: sheet.cells.map((cell) => (cell.part === 'input' ? { ...cell, value: NONSENSE } : cell)),
});

/** What stands in the first cell of each row that a condition marks now, or in words right of it; conditions are asked as formulas. */
async function marked(sheet: BookSheet): Promise<readonly (readonly [at: string, says: unknown])[]> {
  const beside = usedArea(sheet).columns;
  const asked = sheet.conditions.flatMap((condition, i) => {
    const [area] = condition.areas;
    if (condition.kind !== 'formula' || !area) return [];
    const shifted = shifter(condition.formula);
    return Array.from({ length: area.rows }, (_, down) => {
      const row = area.row + down;
      const cell: BookCell = { row, column: beside + i, value: null, formula: shifted(down, 0) };
      return { column: area.column, cell };
    });
  });
  const values = await liveValues({ ...sheet, cells: [...sheet.cells, ...asked.map(({ cell }) => cell)] });
  return asked
    .filter(({ cell: { row, column } }) => values(row, column) === true)
    .map(({ column, cell: { row } }) => {
      const words = sheet.cells.find(
        (cell) => cell.row === row && cell.part === 'warning' && cell.column >= column,
      );
      return [`row ${row + 1}, column ${column + 1}`, values(row, words?.column ?? column)] as const;
    });
}

/** Sheets that mark something and have something to type into. */
const WARNING = TEMPLATES.filter((template) => {
  const { cells, conditions } = planAlone(template, true).sheet;
  return conditions.some(({ kind }) => kind === 'formula') && cells.some(({ part }) => part === 'input');
});

describe.each(WARNING.map((template) => [template.name, template] as const))('%s', (_, template) => {
  test.each([
    ['with its demo job', planAlone(template, true).sheet, 0],
    ['empty', planAlone(template, false).sheet, 0],
    ['with nonsense in it', typed(planAlone(template, true).sheet), 1],
  ])('has words where it is marked: %s', async (__, sheet, least) => {
    const all = await marked(sheet);
    expect(all.length).toBeGreaterThanOrEqual(least);
    // a number has its words in its row or above its table, as the test of the same name without "full" holds
    for (const [at, says] of all.filter(([, what]) => typeof what !== 'number'))
      expect(says, at).toMatch(/\w{2}/);
  });
});
