import { expect, it } from 'vitest';
import { LIGHTS, LIGHTS_AND_ONE } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { WITH_TABLES } from './sheetsWithTables';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it.each(WITH_TABLES)('every table of %s has a button that adds a row to it', async (template) => {
  const before = Object.keys(await sheet.tables());
  await sheet.insert(template);
  const own = Object.keys(await sheet.tables()).filter((name) => !before.includes(name));
  expect(own.length).toBeGreaterThan(0);
  const buttons = sheet.page
    .getByRole('group', { name: 'Tables of this sheet' })
    .getByRole('button', { name: 'Add a row' });
  await expect
    .poll(() => buttons.evaluateAll((all) => all.map((each) => each.getAttribute('aria-label')).sort()))
    .toEqual(own.map((name) => `Add a row to ${name}`).sort());
  for (const name of own) {
    const area = (await sheet.tables())[name];
    // The keyboard brings a foot that is out of sight into it.
    await sheet.page.getByRole('button', { name: `Add a row to ${name}`, exact: true }).press('Enter');
    await expect.poll(async () => (await sheet.tables())[name]).not.toBe(area);
    await sheet.page.keyboard.press('Control+z');
    await expect.poll(async () => (await sheet.tables())[name]).toBe(area);
  }
});

it('is added by a key in any cell of a table, and by Tab in the last one', async () => {
  await sheet.stretch(1900);
  const tally = { before: 'A39:E49', after: 'A39:E50' };
  await expect.poll(() => sheet.tables()).toHaveProperty('Tally', tally.before);
  for (const [cell, key] of [
    ['B41', 'Control+Alt+Enter'],
    ['E49', 'Tab'],
  ] as const) {
    await sheet.click(cell);
    await sheet.page.keyboard.press(key);
    await expect.poll(() => sheet.tables()).toHaveProperty('Tally', tally.after);
    await expect.poll(() => sheet.page.evaluate(() => window.sweeptable.selected())).toBe('A50');
    expect((await sheet.cell('C50')).formula).not.toBe('');
    await sheet.page.keyboard.press('Control+z');
    await expect.poll(() => sheet.tables()).toHaveProperty('Tally', tally.before);
  }
});

it('makes room where something stands below, which goes down by one row', async () => {
  await sheet.stretch(1900);
  await sheet.insert('Lights on set');
  await sheet.enter('D40', 'mind the cable');
  await sheet.page.getByRole('button', { name: 'Add a row to Lights' }).click();
  await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS_AND_ONE);
  await sheet.shows('D41', 'mind the cable');
  expect((await sheet.cell('Q39')).formula).not.toBe('');
  await sheet.undo('A3');
  await sheet.shows('D40', 'mind the cable');
  await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS);
});
