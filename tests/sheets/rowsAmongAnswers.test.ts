import { expect, test } from 'vitest';
import { editedSheet } from './editedSheet';

test('a row more among the answers says nothing, and one that is gone is missed', async () => {
  const sheet = await editedSheet('heads');
  const names = sheet.column('Glance', 'Head', 4);
  sheet.insertRow(sheet.topOf('Glance') + 2);
  sheet.fillFromAbove('Glance', 2);
  await sheet.calculate();
  expect(sheet.column('Glance', 'Head', 5)).toEqual([...names.slice(0, 2), '', ...names.slice(2)]);
  expect(['Number', 'Stops', 'Note'].map((id) => sheet.column('Glance', id, 3)[2])).toEqual(['', '', '']);
  expect(sheet.beside('whole')).toBe('whose row is whole');
  sheet.deleteRow(sheet.topOf('Glance') + 1);
  await sheet.calculate();
  expect(sheet.beside('whole')).toBe('! row 2 is missing below: type 2 under Row');
  sheet.dispose();
});
