import { beforeEach, describe, expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (fresh: Workbench): void => {
  sheet = fresh;
};

describe('a paste from another program', () => {
  allInOneWorkbook(take, { height: 1500 });
  const look = (a1: string) => sheet.page.evaluate((at) => window.sweeptable.look(at), a1);
  const html = async (a1: string, table: string) => {
    await sheet.page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await sheet.page.evaluate(async (words) => {
      const blob = (type: string) => new Blob([words], { type });
      await navigator.clipboard.write([
        new ClipboardItem({ 'text/html': blob('text/html'), 'text/plain': blob('text/plain') }),
      ]);
    }, table);
    await sheet.click(a1);
    await sheet.page.keyboard.press('Control+v');
  };

  beforeEach(async () => {
    if (!(await sheet.sheets()).includes('Lights on set')) await sheet.insert('Lights on set');
  });

  it('makes no date of a power, in one cell or in several', async () => {
    await sheet.paste('C33', '1/2');
    await sheet.shows('C33', '1/2');
    await sheet.paste('C34', '1/2\n1/4');
    await sheet.shows('C35', '1/4');
    await sheet.shows('C34', '1/2');
  });

  it('keeps looks and units, whatever it looks like itself', async () => {
    const before = await Promise.all(['A33', 'B33', 'M33'].map(look));
    await html(
      'A33',
      '<table><tr><td style="background:#f00;font-weight:bold;color:#00f">Elm</td><td>rim</td></tr></table>',
    );
    await sheet.shows('A33', 'Elm');
    await sheet.paste('M33', '1.4');
    await sheet.shows('M33', 1.4);
    expect(await sheet.texts('M33')).toEqual(['1.40 m']);
    expect(await Promise.all(['A33', 'B33', 'M33'].map(look))).toEqual(before);
  });
});
