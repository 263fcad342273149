import { describe, expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (fresh: Workbench): void => {
  sheet = fresh;
};

describe('the sheet that a newcomer meets', () => {
  allInOneWorkbook(take);

  it('has answers before anything is touched', async () => {
    // Worked by hand: f/22 and six tenths is 2^(9.6/2); the draw loses 2·log2(150/120), the filter a third of a stop; f/45 is
    // 2^(11/2), so the pops must bring 2.377 stops, less the twentieth that is let go: 2^2.327 = 5.02. Ambient light of f/4 in
    // 2 s brings 0.023 pops in each of 4 waits, so that 5 do.
    const [pops, open, ready] = await sheet.values('B20', 'B24', 'B26');
    expect(pops).toBe(5);
    expect(open).toBeCloseTo(4 * (1.2 + 1), 9);
    expect(ready).toBeCloseTo(5 * (1.2 + 1), 9);
    await sheet.showsNear('B85', 2 ** (9.6 / 2));
    await sheet.showsNear('B89', 2 * Math.log2(150 / 120));
    await sheet.showsNear('B90', 1 / 3);
    expect(await sheet.sheets()).toEqual(['Pops build']);
    expect(await sheet.page.evaluate(() => window.sweeptable.selected())).toBe('B5');
  });

  it('shows every number in full, with its unit, and no error', async () => {
    const cells = Array.from({ length: 110 }, (_, row) =>
      'ABCDEF'.split('').map((column) => `${column}${row + 1}`),
    ).flat();
    const texts = await sheet.texts(...cells);
    expect(texts.filter((text) => text.startsWith('#'))).toEqual([]);
    expect(await sheet.texts('B5', 'C5', 'B7', 'B13', 'B20', 'B24', 'B90', 'E53')).toEqual([
      'f/22',
      '6',
      '120 mm',
      '2 s',
      '5',
      '8.8 s',
      '0.33 stop',
      'f/19.9',
    ]);
  });

  it('says why in the tip over a refused cell', async () => {
    // A head that gives 400 Ws at most, and 1275 Ws wanted: log2(1275 / 400) is 1.67 stops more.
    await sheet.enter('H5', '=SWEEP.POWERFORDISTANCE(204,0.8,2,,,12,400)');
    await sheet.shows('H5', '#N/A');
    await sheet.hover('H5');
    const tip = sheet.page.locator('.tip');
    await tip.waitFor();
    expect(await tip.innerText()).toMatch(/1\.7 stops? more than the head gives/);
    expect(await tip.locator('xpath=../..').innerText()).toContain('#N/A SWEEP.POWERFORDISTANCE');
    expect(
      await tip.evaluate(
        (e) => e.scrollWidth <= e.clientWidth && e.getBoundingClientRect().right <= innerWidth,
      ),
    ).toBe(true);
  });
});

describe('typing a formula', () => {
  allInOneWorkbook(take);

  it('offers our functions, explains the argument in hand, and answers', async () => {
    const { keyboard } = sheet.page;
    await sheet.click('H5');
    await keyboard.type('=SWEEP.POPSF');
    const offered = sheet.page.locator('li', { hasText: 'SWEEP.POPSFORTARGET' });
    await offered.waitFor();
    await keyboard.press('Enter');

    const help = sheet.page.locator('[data-u-comp="rect-popup"]', { hasText: 'SWEEP.POPSFORTARGET(' });
    const inHand = help.locator('.univer-my-2:has(> .univer-text-primary-500)');
    await expect.poll(() => inHand.innerText()).toMatch(/^reading\s/);
    await keyboard.type('16,');
    await expect.poll(() => inHand.innerText()).toMatch(/^target\s+Lens setting to reach/);
    await keyboard.type('45,1)');
    await keyboard.press('Enter');
    await sheet.shows('H5', 16);
    expect((await sheet.cell('H5')).formula).toBe('=SWEEP.POPSFORTARGET(16,45,1)');
  });

  it('spills a column of readings against one target, and follows an edit', async () => {
    await sheet.enterDown('G15', ['16', '11', '8']);
    await sheet.enter('H15', '=SWEEP.POPSFORTARGET(G15:G17,45)');
    // f/16, f/11 and f/8 lie 3, 4 and 5 stops under f/45; a twentieth of a stop is let go, so 2^2.95, 2^3.95, 2^4.95.
    await sheet.shows('H15', 8);
    expect(await sheet.values('H15', 'H16', 'H17')).toEqual([8, 16, 31]);
    await sheet.enter('G16', '22');
    await sheet.shows('H16', 4);
    expect(await sheet.values('H15', 'H16', 'H17')).toEqual([8, 4, 31]);
  });
});

describe('mistakes', () => {
  allInOneWorkbook(take);

  it('are explained in the tip, and undo takes them back', async () => {
    await sheet.enterDown('H5', ['11', '=SWEEP.STOPDIFF(8,H5)']);
    await sheet.showsNear('H6', 1);
    await sheet.enter('H5', 'eleven');
    await sheet.refuses('H6', '#VALUE!', /eleven/);
    await sheet.hover('H6');
    await expect.poll(() => sheet.page.locator('.tip').innerText()).toMatch(/eleven/);

    await sheet.undo('A3');
    await sheet.shows('H5', 11);
    await sheet.showsNear('H6', 1);
    expect((await sheet.cell('H6')).message).toBeUndefined();
  });
});
