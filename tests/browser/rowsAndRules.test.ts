import { beforeEach, describe, expect, it } from 'vitest';
import { fills, oneDown, POWERS, warnedPowers } from './freezeWarnings';
import { LIGHTS, LIGHTS_AND_ONE } from './lightsOnSet';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1900 },
);

const look = (a1: string) => sheet.page.evaluate((at) => window.sweeptable.look(at), a1);

describe('the warnings of Freeze check', () => {
  let before: (string | undefined)[];

  beforeEach(async () => {
    if (!(await sheet.sheets()).includes('Freeze check')) before = await warnedPowers(sheet);
  });

  it.each([
    ['above its first head', 54, 'rows above'],
    ['above all of them', 27, 'rows above'],
  ])('go with their heads where a row comes in %s, and back with undo', async (_, row, entry) => {
    await sheet.rowMenu(row, entry);
    await expect.poll(() => fills(sheet, POWERS.map(oneDown))).toEqual(before);
    // What came in holds no head: nothing there is worth a warning.
    const [warned] = before;
    expect((await fills(sheet, [`C${row}`]))[0]).not.toBe(warned);
    await sheet.undo('A3');
    await expect.poll(() => fills(sheet, POWERS)).toEqual(before);
  });
});

describe('a row that comes in at the top of a table', () => {
  it('looks like a row, below its heading', async () => {
    if (!(await sheet.sheets()).includes('Lights on set')) await sheet.insert('Lights on set');
    const cells = ['A', 'C', 'M', 'O', 'AB', 'AM'];
    const looks = (at: number) => Promise.all(cells.map((column) => look(`${column}${at}`)));
    const before = await looks(33);
    await sheet.rowMenu(32, 'rows after');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS_AND_ONE);
    expect(await looks(33)).toEqual(before);
    expect(await looks(34)).toEqual(before);
    await sheet.undo('A3');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS);
  });
});
