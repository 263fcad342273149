import { describe, expect, it } from 'vitest';
import { COLUMNS, LIGHTS, LIGHTS_AND_ONE, TALL, lightsOnSet } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

describe('rows pasted right below a table', () => {
  const { row } = lightsOnSet(() => sheet);
  const last = () => expect.poll(() => sheet.tables());
  const LIGHTS_AND_TWO = 'A32:AO40';

  it('belong to it as one word', async () => {
    await sheet.paste('A39', 'Alder 600');
    await last().toHaveProperty('Lights', LIGHTS_AND_ONE);
    await sheet.enter('D39', '16');
    await sheet.showsNear('Q39', 16);
    await sheet.undo('A3');
    await sheet.undo('A3');
    await last().toHaveProperty('Lights', LIGHTS);
    expect(await row(39)).toEqual(COLUMNS.map(() => ''));
  });

  it('belong to it when they come from another row of it', async () => {
    await sheet.copy('A33', 'Q34');
    await sheet.click('A39');
    await sheet.page.keyboard.press('Control+v');
    await last().toHaveProperty('Lights', LIGHTS_AND_TWO);
    await sheet.showsNear('Q39', Number((await sheet.values('Q33'))[0]));
    await sheet.enter('M40', '-3');
    await sheet.told('Metres from the front of the light to the subject, above 0 and up to 20.');
    await sheet.undo('A3');
    await last().toHaveProperty('Lights', LIGHTS);
    expect(await row(39)).toEqual(COLUMNS.map(() => ''));
  });

  it('go into rows of their own where something else stands below', async () => {
    await sheet.enter('C40', '7');
    await sheet.shows('C40', 7);
    await sheet.paste('A38', 'one\ntwo\nthree');
    await sheet.shows('A40', 'three');
    await last().toHaveProperty('Lights', LIGHTS_AND_TWO);
    await sheet.shows('C42', 7);
    await sheet.undo('A3');
    await sheet.shows('C40', 7);
    await last().toHaveProperty('Lights', LIGHTS);
  });

  it('stay outside where they begin on a row that is taken', async () => {
    await sheet.enterDown('C40', ['7', '8']);
    await sheet.paste('A39', 'one\ntwo\nthree');
    await sheet.shows('A41', 'three');
    await last().toHaveProperty('Lights', LIGHTS);
    expect((await sheet.cell('Q39')).formula).toBe('');
    await sheet.shows('C40', 7);
  });
});
