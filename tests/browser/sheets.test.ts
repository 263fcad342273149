import { describe, expect, it } from 'vitest';
import { charts, numbersOf } from './chartsOnSheet';
import { COLUMNS, LIGHTS, LIGHTS_AND_ONE, lightsOnSet, TALL } from './lightsOnSet';
import { allInOneWorkbook, eachItsWorkbook } from './onePage';
import { status } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (fresh: Workbench): void => {
  sheet = fresh;
};
const tables = () => expect.poll(() => sheet.tables());
const formula = async (a1: string) => (await sheet.cell(a1)).formula;

describe('a sheet inserted from the pane', () => {
  eachItsWorkbook(take, TALL);

  it('answers, follows a new target, and shows its chart', async () => {
    await sheet.insert('Pops build');
    await sheet.shows('B20', 5);
    expect(await sheet.page.evaluate(() => window.sweeptable.selected())).toBe('B5');

    // f/22 and 6 tenths is 2^9.6, f/32 2^10, and 2^0.9772 is lost: 2^(0.4 + 0.9772 − 0.05) = 2.51 pops, of which ambient light
    // brings 0.02 in each of 2 waits of 2.2 s.
    await sheet.enter('B6', '32');
    await sheet.shows('B20', 3);
    await sheet.showsNear('B24', 2 * 2.2);
    await sheet.showsNear('B26', 3 * 2.2);

    const first = async () => (await numbersOf(charts(sheet)))[0]?.slice(0, 2);
    expect(await first()).toEqual(['1', 'f/19.9']);
    // A stop more from the heads is a stop more at the film: 19.855 · √2 = 28.08.
    await sheet.enter('B5', '32');
    await expect.poll(first).toEqual(['1', 'f/28.1']);
  });
});

describe('in a new workbook', () => {
  allInOneWorkbook(take);

  describe('a sheet', () => {
    it('refuses what its inputs do not take, in a sentence beside the cell that keeps it to be mended', async () => {
      await sheet.enter('B7', '-5');
      await expect
        .poll(() => sheet.refusal.allInnerTexts().then((all) => all.join()))
        .toContain('A length in millimetres, above 0.');
      expect(await sheet.page.getByRole('dialog').count()).toBe(0);
      await sheet.shows('B7', 120);
      // typed over where it stands, by somebody who has read why: keys that come faster go to the next cell
      await sheet.page.waitForTimeout(1000);
      await sheet.page.keyboard.insertText('150');
      await sheet.page.keyboard.press('Enter');
      await sheet.shows('B7', 150);
      expect(await sheet.refusal.count()).toBe(0);
      await sheet.enter('B7', '-5');
      await sheet.told('A length in millimetres, above 0.');
      await sheet.shows('B7', 150);
      await sheet.undo('A3');
      await sheet.shows('B7', 120);
      await sheet.enter('B9', '1/3');
      await sheet.shows('B9', '1/3');
    });

    it('warns beside the value that is odd', async () => {
      await sheet.enter('B8', '100');
      await sheet.shows('D8', '! shorter than the focal length');
      await sheet.undo('A3');
      await sheet.shows('D8', 'lens board to sensor');
    });
  });

  describe('a formula from the pane', () => {
    const put = async (name: string) => {
      await sheet.pane.getByRole('tab', { name: 'Functions' }).click();
      await sheet.pane.getByRole('searchbox').fill(name);
      await sheet.pane.getByText(name, { exact: true }).first().click();
      await sheet.pane.getByRole('button', { name: /cell/ }).first().click();
    };

    it('goes into the chosen cell, and never over what is there', async () => {
      await sheet.click('H5');
      await put('STOPDIFF');
      await expect.poll(() => formula('H5')).toMatch(/^=SWEEP\.STOPDIFF\(/);
      await sheet.click('B6');
      await sheet.pane.getByRole('button', { name: /cell/ }).first().click();
      await expect
        .poll(() => status(sheet.page).innerText())
        .toBe('Not done. Cell B6 holds something, and it was left there. Select an empty cell.');
      await sheet.shows('B6', 45);
      await sheet.pane.getByRole('searchbox').fill('');
    });
  });

  describe('the pane', () => {
    it('folds away', async () => {
      const button = sheet.page.getByRole('button', { name: 'Sheets and functions' });
      expect(await button.getAttribute('aria-expanded')).toBe('true');
      await button.click();
      expect(await button.getAttribute('aria-expanded')).toBe('false');
      expect(await sheet.pane.isVisible()).toBe(false);
      await button.click();
      expect(await sheet.pane.isVisible()).toBe(true);
    });
  });
});

describe('rows in a table', () => {
  allInOneWorkbook(take, TALL);
  const { row } = lightsOnSet(() => sheet);

  it('that are typed below it belong to it', async () => {
    await sheet.enter('A39', 'Alder 600');
    await tables().toHaveProperty('Lights', LIGHTS_AND_ONE);
    await sheet.enter('D39', '16');
    await sheet.showsNear('Q39', 16);
    await sheet.undo('A3');
    await sheet.undo('A3');
    await tables().toHaveProperty('Lights', LIGHTS);
    expect(await row(39)).toEqual(COLUMNS.map(() => ''));
  });
});
