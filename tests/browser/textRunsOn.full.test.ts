import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('a text that would just have room without the edges of its cell runs on over the empty cell beside it, so that its last letter is whole', async () => {
  // a sheet of ours has no lines between its cells
  await sheet.page.locator('[data-u-comp=sheet-bar-append-button]').first().click();
  await expect.poll(() => sheet.sheets()).toHaveLength(2);
  await sheet.enter('H5', 'm');
  const words = await sheet.page.evaluate(() => {
    const { width, font } = window.sweeptable.room('H5');
    const context = document.createElement('canvas').getContext('2d');
    if (!context) throw new Error('Nothing can be measured.');
    context.font = font;
    // letters without heads: above them lies nothing but the line between two cells
    for (let m = 0; m < 20; m++)
      for (let r = 0; r < 20; r++) {
        const text = 'm'.repeat(m) + 'r'.repeat(r);
        const wide = context.measureText(text).width;
        if (wide > width - 2 && wide <= width) return text;
      }
    throw new Error('No text is as wide as the cell.');
  });
  /** A few pixels high up in a cell: within it, or where it begins. */
  const seen = async (a1: string, isBorder: boolean): Promise<string> => {
    const { x, y, width } = await sheet.page.evaluate(
      (at) => ({ ...window.sweeptable.place(at), width: window.sweeptable.room(at).width }),
      a1,
    );
    const clip = { x: (isBorder ? x - width / 2 : x) - 2, y: y - 9, width: 4, height: 3 };
    return (await sheet.page.screenshot({ clip })).toString('base64');
  };
  await sheet.enter('H5', words);
  await sheet.shows('H5', words);
  await sheet.click('H20');
  const within = await seen('I12', false);
  expect(await seen('I12', true)).not.toBe(within);
  await expect.poll(() => seen('I5', true)).toBe(within);
});
