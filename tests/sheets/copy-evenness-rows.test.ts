import { expect, test } from 'vitest';
import { EVENNESS_ANSWERS as ANSWERS } from './evennessAnswers';
import { editedSheet } from './editedSheet';

const ACROSS = [1, 2, 3, 4, 5].map((k) => `Across ${k}`);

// Where the means of the places stand, right of the page, a row that is inserted between the answers goes through them.
test('a row more among the answers, with its formulas and without, changes none of them', async () => {
  const sheet = await editedSheet('copy-evenness');
  const map = () => ACROSS.map((name) => sheet.column('Map', name, 6));
  const answers = (lower: (field: string) => number) =>
    ANSWERS.map((field) => sheet.cell(field, lower(field)));
  /** What each value lies off the mean of its place: the table of values is a row lower later. */
  const off = (lowered: number) => sheet.column('Field', 'Off 3', 10 + lowered).slice(lowered);
  const before = [answers(() => 0), map(), off(0)];
  expect(before[0]).not.toContain('');
  const above = sheet.rowOf('ends');
  sheet.insertRow(above);
  const lower = (field: string): number => (sheet.rowOf(field) >= above ? 1 : 0);
  const row = above - sheet.topOf('Mean');
  expect(row).toBeGreaterThan(0);
  expect(row).toBeLessThan(5);
  await sheet.calculate();
  expect([answers(lower), map(), off(1)]).toEqual(before);
  sheet.fillFromAbove('Mean', row);
  await sheet.calculate();
  expect([answers(lower), map(), off(1)]).toEqual(before);
  sheet.dispose();
});
