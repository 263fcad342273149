import { describe, expect, it } from 'vitest';
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

describe('a row that comes in at the top of a table', () => {
  it('looks like a row, below its heading', async () => {
    if (!(await sheet.sheets()).includes('Lights on set')) await sheet.insert('Lights on set');
    const cells = ['A', 'C', 'M', 'O', 'AB', 'AM'];
    const looks = (at: number) => Promise.all(cells.map((column) => look(`${column}${at}`)));
    const before = await looks(33);
    await sheet.rowMenu(32, 'rows below');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS_AND_ONE);
    expect(await looks(33)).toEqual(before);
    expect(await looks(34)).toEqual(before);
    await sheet.undo('A3');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS);
  });
});
