import { expect, it } from 'vitest';
import { LIGHTS, TURN } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { isStored } from './stored';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('finds the work of the last visit, at the sheet that was in view, and the pane folded away as it was', async () => {
  await sheet.insert('Lights on set');
  await sheet.enter('B5', '32');
  await sheet.enterDown('I18', ['kept', '=SEQUENCE(3)']);
  await sheet.shows('I21', 3);
  const before = await sheet.values('T9', 'AC33', 'AG37', 'I21');
  await sheet.page.getByRole('button', { name: 'Sheets and functions' }).click();
  await isStored(sheet.page, 'I18', 'kept');
  await sheet.reload();
  expect(await sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
  expect(await sheet.page.evaluate(() => window.sweeptable.inView())).toBe('Lights on set');
  expect(await sheet.values('T9', 'AC33', 'AG37', 'I21')).toEqual(before);
  await sheet.shows('I18', 'kept');
  expect(await sheet.tables()).toEqual({ Build: 'A52:G64', Tally: 'A39:E49', Lights: LIGHTS, Turn: TURN });
  expect(await sheet.pane.isVisible()).toBe(false);
  await sheet.page.getByRole('button', { name: 'Sheets and functions' }).click();
  expect(await sheet.pane.isVisible()).toBe(true);
  await sheet.enter('B8', 'blue');
  await sheet.refuses('T7', '#VALUE!', /blue/);
});
