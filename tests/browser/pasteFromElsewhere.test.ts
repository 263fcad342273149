import { beforeEach, describe, expect, it } from 'vitest';
import { LIGHTS } from './lightsOnSet';
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

  it('counts eight heads where six have room, and what stands below goes on', async () => {
    await sheet.enter('C40', '7');
    await sheet.shows('C40', 7);
    const heads = Array.from({ length: 8 }, (_, i) => `Head ${i}\tambient\t\t${i + 8}`).join('\n');
    await sheet.paste('A33', heads);
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', 'A32:AO40');
    await sheet.shows('A40', 'Head 7');
    expect((await sheet.cell('Q40')).formula).toBe((await sheet.cell('Q33')).formula.replaceAll('33', '40'));
    await sheet.shows('C42', 7);
    await sheet.page.keyboard.press('Control+z');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS);
    await sheet.shows('C40', 7);
    await sheet.shows('A33', 'Elm');
  });
});
