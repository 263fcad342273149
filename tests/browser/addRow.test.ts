import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { LIGHTS, LIGHTS_AND_ONE } from './lightsOnSet';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1900 },
);

const lights = () => sheet.page.getByRole('button', { name: 'Add a row to Lights' });
const formula = async (a1: string) => (await sheet.cell(a1)).formula;

it('a button at the foot of a table adds a row with formulas, looks and rules, and one undo takes it back', async () => {
  await sheet.insert('Lights on set');
  expect(await lights().isVisible()).toBe(true);
  const look = (a1: string) => sheet.page.evaluate((at) => window.sweeptable.look(at), a1);
  const before = { formula: await formula('Q38'), input: await look('A38') };
  await lights().click();
  await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS_AND_ONE);
  expect(await formula('Q39')).toBe(before.formula.replaceAll(/([A-Z])38\b/g, '$139'));
  expect(await look('A39')).toEqual(before.input);
  // What is typed next goes into the new row.
  expect(await sheet.page.evaluate(() => window.sweeptable.selected())).toBe('A39');
  await sheet.page.keyboard.type('Kicker');
  await sheet.page.keyboard.press('Enter');
  await sheet.shows('A39', 'Kicker');
  await sheet.enter('M39', '-3');
  await sheet.told('Metres from the front of the light to the subject, above 0 and up to 20.');
  await sheet.page.keyboard.press('Escape');
  await sheet.undo('A3');
  await expect.poll(() => sheet.cell('A39').then(({ value }) => value ?? '')).toBe('');
  await sheet.undo('A3');
  await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS);
});
