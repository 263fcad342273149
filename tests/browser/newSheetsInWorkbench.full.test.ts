import { describe, expect, it } from 'vitest';
import { checkOfferToTakeBack } from './newSheetsChecks';
import { eachItsWorkbook } from './onePage';
import { tab } from './paneChecks';
import { asSheetsHost, copyAsValues } from './sheetsInWorkbench';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

checkOfferToTakeBack((use) => use(asSheetsHost(sheet)));

describe('a copy as values in the workbench', () => {
  it('keeps rules, notes and charts, grows without formulas, and is taken away by one undo', async () => {
    await sheet.insert('Lights on set');
    await sheet.showsNear('B24', 2 ** 8.3);
    await copyAsValues(sheet, 'Lights on set values');
    await sheet.enter('G13', '-3');
    await sheet.told('Metres from the front of the light to the subject, above 0.');
    await tab(sheet.page, 'Charts').click();
    const card = sheet.pane.getByRole('tabpanel', { name: 'Charts' });
    await card.getByText('Show the numbers').click();
    expect(await card.locator('tbody tr').count()).toBe(5);
    await sheet.enter('A18', 'Alder 600');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights_2', 'A12:R18');
    expect((await sheet.cell('J18')).formula).toBe('');
    await sheet.undo('A3');
    await sheet.undo('A3');
    await expect.poll(() => sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
    expect(await sheet.tables()).not.toHaveProperty('Lights_2');
  });
});
