import { expect, test } from 'vitest';
import { layRefusal } from '../../../src/hosts/workbench/sheets/layRefusal';

const NAME = 'Lights on set';

test('a sheet that could not be laid: what happened, how the workbook is, and what to do', () =>
  expect(layRefusal(new Error('sheet.mutation.insert-sheet'), NAME, ['Sheet1'])).toBe(
    'The grid refused, and only says “sheet.mutation.insert-sheet”. The workbook is as it was. Reload the page and try again.',
  ));

test('where the grid gives no reason, none is said', () => {
  const said =
    'The grid refused, and does not say why. The workbook is as it was. Reload the page and try again.';
  expect(layRefusal(new Error(''), NAME, ['Sheet1'])).toBe(said);
  expect(layRefusal('', NAME, [])).toBe(said);
});

test('a sheet that the grid has not taken away again is told of', () =>
  expect(layRefusal('a fault', NAME, ['Sheet1', NAME])).toBe(
    'The grid refused, and only says “a fault”. A half-made sheet “Lights on set” may be left in the workbook: delete it. Reload the page and try again.',
  ));
