import { describe, expect, it } from 'vitest';
import { checkOfferToTakeBack } from './newSheetsChecks';
import { KEY_LIGHT, LIGHTS_AND_ONE, TALL } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { tab } from './paneChecks';
import { asSheetsHost, copyAsValues } from './sheetsInWorkbench';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

checkOfferToTakeBack((use) => use(asSheetsHost(sheet)));

describe('a copy as values in the workbench', () => {
  it('keeps rules, notes and charts, grows without formulas, and is taken away by one undo', async () => {
    await sheet.insert('Lights on set');
    await sheet.showsNear(KEY_LIGHT.cell, KEY_LIGHT.value);
    await copyAsValues(sheet, 'Lights on set values');
    await sheet.enter('M33', '-3');
    await sheet.told('Metres from the front of the light to the subject, above 0 and up to 20.');
    await tab(sheet.page, 'Charts').click();
    const card = sheet.pane.getByRole('tabpanel', { name: 'Charts' });
    await card.getByText('Show the numbers').click();
    expect(await card.locator('tbody tr').count()).toBe(6);
    await sheet.enter('A39', 'Alder 600');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights_2', LIGHTS_AND_ONE);
    expect((await sheet.cell('Q39')).formula).toBe('');
    await sheet.undo('A3');
    await sheet.undo('A3');
    await expect.poll(() => sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
    expect(await sheet.tables()).not.toHaveProperty('Lights_2');
  });
});
