import { describe, expect, it } from 'vitest';
import { chartCalled, charts, numbersOf } from './chartsOnSheet';
import { COLUMNS, enterAmbient, KEY_LIGHT, LIGHTS, TALL, lightsOnSet } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { checkRowThatComesIn } from './rowChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

describe('a sheet inserted from the pane', () => {
  it('is numbered where its name is taken, and reads its own table', async () => {
    await sheet.insert('Lights on set');
    await sheet.insert('Lights on set');
    await sheet.showsNear(KEY_LIGHT.cell, KEY_LIGHT.value);
    expect(await sheet.sheets()).toEqual(['Pops build', 'Lights on set', 'Lights on set (2)']);
    expect(await sheet.tables()).toMatchObject({ Lights: LIGHTS, Lights_2: LIGHTS });
    expect((await sheet.cell('O33')).formula).toContain('SUM(Lights_2[Light])');

    // All the light at the subject is the one that is metered there.
    for (const cell of ['F34', 'F35', 'F36', 'F38']) await sheet.enter(cell, 'no');
    await sheet.showsNear('O33', 1);
    await sheet.sheet('Lights on set');
    expect((await sheet.cell('O33')).value).toBeLessThan(0.5);
  });

  it('is taken away by one undo', async () => {
    await sheet.insert('Lights on set');
    await sheet.undo('A3');
    await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
    expect(await sheet.tables()).toEqual({ Build: 'A52:G64', Tally: 'A39:E49' });
    await sheet.insert('Lights on set');
    expect(await sheet.tables()).toHaveProperty('Lights');
  });
});

describe('rows in a table', () => {
  const { row } = lightsOnSet(() => sheet);

  checkRowThatComesIn(
    [
      ['at the top', 33, 'rows above', 33],
      ['in the middle', 35, 'rows above', 35],
      ['at the end', 38, 'rows below', 39],
    ],
    () => sheet,
  );

  it('are in the chart at once', async () => {
    const chart = chartCalled(sheet, 'Share of the light at the subject');
    await expect.poll(() => numbersOf(chart)).toHaveLength(6);
    await enterAmbient(sheet, 39, '16');
    await expect.poll(() => numbersOf(chart)).toHaveLength(7);
    await sheet.sheet('Pops build');
    await chartCalled(sheet, 'Reading at the film against pops').waitFor();
    expect(await charts(sheet).count()).toBe(1);
  });

  it('leave no answer behind that comes after they were taken back', async () => {
    for (const pause of [0, 15, 30, 45, 60]) {
      await sheet.enter('A39', 'Alder 600');
      await sheet.enter('D39', '16');
      await sheet.showsNear('Q39', 16);
      await sheet.undo('A3');
      await sheet.page.waitForTimeout(pause);
      await sheet.page.keyboard.press('Control+z');
      await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS);
      await sheet.showsNear(KEY_LIGHT.cell, KEY_LIGHT.value);
      expect(await row(39)).toEqual(COLUMNS.map(() => ''));
    }
  });
});

describe('the pane', () => {
  it('folds away, and stays so on the next visit', async () => {
    const button = sheet.page.getByRole('button', { name: 'Sheets and functions' });
    expect(await button.getAttribute('aria-expanded')).toBe('true');
    await button.click();
    expect(await button.getAttribute('aria-expanded')).toBe('false');
    expect(await sheet.pane.isVisible()).toBe(false);
    await sheet.reload();
    expect(await sheet.pane.isVisible()).toBe(false);
    await button.click();
    expect(await sheet.pane.isVisible()).toBe(true);
  });
});
