import { describe, expect, it } from 'vitest';
import { COLUMNS, lightsOnSet, TALL } from './lightsOnSet';
import { allInOneWorkbook } from './onePage';
import { lines, rowsOf } from './tableRows';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (fresh: Workbench): void => {
  sheet = fresh;
};

describe('rows pasted right below a table', () => {
  allInOneWorkbook(take, TALL);
  const { row } = lightsOnSet(() => sheet);
  const lastLight = async () => (await rowsOf(sheet, 'Lights')).last;
  /** A light that needs no head, one metre away. */
  const lamp = (name: string, reading: number) => [
    name,
    'ambient',
    '',
    reading,
    '',
    'yes',
    '',
    '',
    '',
    '',
    '',
    '',
    1,
  ];

  it('belong to it, with formulas, formats and input rules, until they are taken back', async () => {
    await sheet.paste('A39', lines([lamp('Lamp', 16), lamp('Window', 22)]));
    await expect.poll(() => lastLight()).toBe(40);
    // f/16 is 2^4, and f/22 stands for 2^4.5; light goes with the square.
    await sheet.showsNear('Q39', 2 ** 4);
    await sheet.showsNear('X40', 2 ** 9);
    expect(await sheet.texts('M39', 'D40')).toEqual(['1.00 m', 'f/22']);
    await expect.poll(async () => (await sheet.cell('O40')).text).toMatch(/%$/);
    await sheet.enter('M40', '-3');
    await sheet.told('Metres from the front of the light to the subject, above 0 and up to 20.');
    await sheet.shows('M40', 1);

    await sheet.undo('A3');
    await expect.poll(() => lastLight()).toBe(38);
    expect(await row(39)).toEqual(COLUMNS.map(() => ''));
    expect(await row(40)).toEqual(COLUMNS.map(() => ''));
    await sheet.enter('M40', '-3');
    await sheet.shows('M40', -3);
    await sheet.undo('A3');
    await sheet.shows('M40', null);
  });
});
