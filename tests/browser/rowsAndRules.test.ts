import { beforeEach, describe, expect, it } from 'vitest';
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
const fills = async (cells: readonly string[]) =>
  (await Promise.all(cells.map(look))).map(({ fill }) => fill);

describe('the warnings of Freeze check', () => {
  /** The head's power lies above what still freezes where its column C says so. */
  const POWERS = ['C54', 'C55', 'C56', 'C57'];
  const oneDown = (a1: string) => a1.replace(/\d+/, (row) => String(Number(row) + 1));
  let before: (string | undefined)[];

  beforeEach(async () => {
    if (!(await sheet.sheets()).includes('Freeze check')) {
      await sheet.insert('Freeze check');
      await expect.poll(async () => new Set(await fills(POWERS)).size).toBe(2);
      before = await fills(POWERS);
    }
  });

  it.each([
    ['above its first head', 54, 'rows above'],
    ['above all of them', 27, 'rows above'],
  ])('go with their heads where a row comes in %s, and back with undo', async (_, row, entry) => {
    await sheet.rowMenu(row, entry);
    await expect.poll(() => fills(POWERS.map(oneDown))).toEqual(before);
    // What came in holds no head: nothing there is worth a warning.
    const [warned] = before;
    expect((await fills([`C${row}`]))[0]).not.toBe(warned);
    await sheet.undo('A3');
    await expect.poll(() => fills(POWERS)).toEqual(before);
  });

  it('are with their heads after a reload too', async () => {
    await sheet.rowMenu(54, 'rows above');
    await expect.poll(() => fills(POWERS.map(oneDown))).toEqual(before);
    await sheet.reload();
    await expect.poll(() => fills(POWERS.map(oneDown))).toEqual(before);
  });
});

describe('a row that comes in at the top of a table', () => {
  it.each([
    ['above its first row', 33, 'rows above'],
    ['below its heading', 32, 'rows after'],
  ])('looks like a row, %s', async (_, row, entry) => {
    if (!(await sheet.sheets()).includes('Lights on set')) await sheet.insert('Lights on set');
    const cells = ['A', 'C', 'M', 'O', 'AB', 'AM'];
    const looks = (at: number) => Promise.all(cells.map((column) => look(`${column}${at}`)));
    const before = await looks(33);
    await sheet.rowMenu(row, entry);
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS_AND_ONE);
    expect(await looks(33)).toEqual(before);
    expect(await looks(34)).toEqual(before);
    await sheet.undo('A3');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS);
  });
});
