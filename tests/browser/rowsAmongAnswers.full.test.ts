import { expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
});

/** The rows of some columns as they are shown. */
const shown = (columns: string, rows: readonly number[]): Promise<string[]> =>
  sheet.texts(...rows.flatMap((row) => [...columns].map((column) => `${column}${row}`)));

it('a row that is inserted among the answers of Copy evenness changes none of them', async () => {
  await sheet.insert('Copy evenness');
  // the verdict and what follows it; the stops from the centre beside them
  const [answers, map] = [
    [17, 18, 19, 20, 21, 22],
    [6, 7, 8, 9, 10],
  ];
  await sheet.shows('B17', 'beyond');
  const all = async () => [...(await shown('B', answers)), ...(await shown('EFGHIJ', map))];
  const before = await all();
  await sheet.rowMenu(23, 'rows above');
  await expect.poll(() => shown('M', [22, 23, 24])).toEqual(['1', '', '2']);
  await expect.poll(all).toEqual(before);
});

it('a row that is inserted among the lights of the page of Shot record shows none of them twice', async () => {
  await sheet.insert('Shot record');
  await sheet.rowMenu(21, 'rows above');
  await expect
    .poll(() => shown('A', [19, 20, 21, 22, 23, 24, 25]))
    .toEqual(['key', 'fill', '', 'rim', 'accent', 'background', '']);
  expect(await shown('BG', [21])).toEqual(['', '']);
});

it('a row that is inserted among the answers of Heads shows no error, and takes the number that is typed there', async () => {
  await sheet.insert('Heads');
  // the sheet begins at its list, below the answers
  await sheet.goTo('A5');
  await sheet.rowMenu(13, 'rows above');
  await expect.poll(() => shown('A', [12, 13, 14])).toEqual(['Birch 1200', '', 'Cedar 2400']);
  expect(await shown('BCDEFGH', [13])).toEqual(['', '', '', '', '', '', '']);
  await sheet.enter('G13', '4');
  await expect.poll(() => shown('A', [13])).toEqual(['Hazel 400']);
});

it('a row that is inserted in the order of Pops plan says no step twice', async () => {
  await sheet.insert('Pops plan');
  await expect.poll(() => shown('A', [43])).toEqual([expect.stringMatching(/^pops? /)]);
  await sheet.goTo('A50');
  await sheet.rowMenu(44, 'rows above');
  await expect.poll(() => sheet.tables()).toMatchObject({ Order: 'A42:B49' });
  expect(await shown('AB', [44, 45])).toEqual(['', '', '', '']);
});
