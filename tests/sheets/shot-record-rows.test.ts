import { afterAll, beforeAll, expect, test } from 'vitest';
import { editedSheet } from './editedSheet';

let sheet: Awaited<ReturnType<typeof editedSheet>>;
beforeAll(async () => {
  sheet = await editedSheet('shot-record');
});
afterAll(() => sheet.dispose());

test('an error in one cell of a light is said in its own row', async () => {
  const [notes, own] = [sheet.column('Again', 'Note', 5), sheet.column('Again', 'Its own', 5)];
  const held = [
    ['Light', 1, 'fill'],
    ['Shows', 4, '600'],
  ] as const;
  for (const [name, row] of held) sheet.put('Record', name, row, { f: '=1/0' });
  await sheet.calculate();
  expect(sheet.column('Record', 'Lacks', 5)).toEqual(['', 'error', '', '', 'error']);
  for (const id of ['Again', 'AsLit'])
    expect(sheet.column(id, 'Light', 5)).toEqual(['key', 'error', 'rim', 'accent', 'background']);
  expect(sheet.cell('lights')).toBe(5);
  // The middle of −0.2, −0.2 and +0.5 is what it was.
  const ERROR = 'a cell holds an error: type it again';
  expect(sheet.column('Again', 'Note', 5)).toEqual([notes[0], ERROR, notes[2], notes[3], ERROR]);
  expect(sheet.column('Again', 'Its own', 5)).toEqual([own[0], '', own[2], own[3], '']);
  for (const [name, row, value] of held) sheet.put('Record', name, row, { v: value, f: null });
  await sheet.calculate();
  expect([sheet.column('Again', 'Note', 5), sheet.column('Again', 'Its own', 5)]).toEqual([notes, own]);
});

test('a row more among the answers shows no light in the place of another, and a light more comes in its place', async () => {
  const notes = sheet.column('Again', 'Note', 5);
  sheet.insertRow(sheet.topOf('Again') + 2);
  sheet.fillFromAbove('Again', 2);
  await sheet.calculate();
  expect(sheet.column('Again', 'Light', 7)).toEqual(['key', 'fill', '', 'rim', 'accent', 'background', '']);
  expect(sheet.column('Again', 'Note', 6)).toEqual([notes[0], notes[1], '', ...notes.slice(2)]);
  // the lights are a row lower now: above the third
  sheet.insertRow(sheet.topOf('Record') + 3);
  await sheet.calculate();
  expect(sheet.column('Again', 'Light', 8)).toEqual([
    'key',
    'fill',
    '',
    '',
    'rim',
    'accent',
    'background',
    '',
  ]);
});
