import { expect, test } from 'vitest';
import { headless } from '../../../src/engine/headless';
import { snapshot } from '../book';

/** The format of a cell that keeps 1/60 as it is typed. */
const TEXTS = { n: { pattern: '@' } };

test('a formula in a cell of texts gives a number to all that read it, whenever they do', async () => {
  const workbook = snapshot({ Plan: [['=8', '=SUM(A1,J1)', '=TYPE(A1)+0*J1', '=A1', '=A1:A1+J1']] });
  const first = workbook.sheets?.['Plan']?.cellData?.[0]?.[0];
  if (!first) throw new Error('There is no first cell.');
  first.s = TEXTS;
  const book = headless(workbook);
  await book.calculate();
  // worked by hand; 1 is the type of a number by OpenFormula, 2 that of a text
  expect(book.read('Plan', 'A1:E1')).toEqual([[8, 8, 1, 8, 8]]);
  const sheet = book.workbook.getSheetByName('Plan');
  sheet?.getRange('J1').setValue(1);
  await book.calculateChanged();
  expect(book.read('Plan', 'A1:E1')).toEqual([[8, 9, 1, 8, 9]]);
  // what takes it over is no cell of texts
  expect(sheet?.getRange('D1').getNumberFormat()).not.toBe('@');
  book.dispose();
});
