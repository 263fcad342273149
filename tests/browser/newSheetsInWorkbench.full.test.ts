import { Workbook } from '@cj-tech-master/excelts';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { chartCalled, charts, numbersOf } from './chartsOnSheet';
import { checkNewJob, checkOfferToTakeBack, checkTakingBack } from './newSheetsChecks';
import { COLUMNS, KEY_LIGHT, LIGHTS, LIGHTS_AND_ONE, TALL, TURN } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { open } from './openedFile';
import { status, tab } from './paneChecks';
import { asSheetsHost, copyAsValues } from './sheetsInWorkbench';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

const said = () => expect.poll(() => status(sheet.page).innerText());
const takeBack = () => sheet.pane.getByRole('button', { name: 'Take back' }).click();

const cellsTo = (row: number) =>
  Array.from({ length: row }, (_, i) => COLUMNS.map((column) => `${column}${i + 1}`)).flat();

checkTakingBack((use) => use(asSheetsHost(sheet)));
checkOfferToTakeBack((use) => use(asSheetsHost(sheet)));
checkNewJob((use) => use(asSheetsHost(sheet)));

describe('a sheet that came into the workbench', () => {
  it('stays where a formula elsewhere uses it', async () => {
    await sheet.insert('Lights on set');
    await sheet.sheet('Pops build');
    await sheet.enter('H5', "='Lights on set'!B5+SUM(Lights[Light])");
    await takeBack();
    await said().toMatch('The formula in H5 on “Pops build” uses it, so the sheet was left as it is.');
    expect(await sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
  });

  it('comes in beside a sheet that is called like its table', async () => {
    const book = new Workbook();
    book.addWorksheet('Lights').getCell('A1').value = 1;
    await open(sheet, Buffer.from(await book.xlsx.writeBuffer()));
    await sheet.insert('Lights on set');
    await sheet.showsNear(KEY_LIGHT.cell, KEY_LIGHT.value);
    expect(await sheet.tables()).toEqual({ Lights_2: LIGHTS, Turn: TURN });
  });

  it('comes back with all that was beside it when its taking back is undone', async () => {
    await sheet.insert('Lights on set');
    await sheet.showsNear(KEY_LIGHT.cell, KEY_LIGHT.value);
    await takeBack();
    await said().toBe('“Lights on set” is taken away again. Ctrl+Z brings it back.');
    expect(await sheet.tables()).toEqual({ Build: 'A52:G64', Tally: 'A39:E49' });
    await sheet.undo('A3');
    await expect.poll(() => sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
    expect(await sheet.tables()).toHaveProperty('Lights', LIGHTS);
    await sheet.sheet('Lights on set');
    await sheet.showsNear(KEY_LIGHT.cell, KEY_LIGHT.value);
    await sheet.enter('M33', '-3');
    await sheet.told('Metres from the front of the light to the subject, above 0 and up to 20.');
    await chartCalled(sheet, 'Share of the light at the subject').waitFor();
  });

  it('says so where it does not arrive, and comes when it does', async () => {
    // a visitor of its own: what is aborted must not have been fetched before
    const late = (await sheet.page.context().browser()?.newPage({ locale: 'en-US' })) as Page;
    await late.route('**/long-sheets.js', (route) => route.abort());
    await late.goto(sheet.page.url());
    await late.waitForFunction(() => document.documentElement.dataset['pane'] === 'true');
    const insert = late.getByRole('button', { name: 'Insert Proof', exact: true });
    await insert.click();
    await expect.poll(() => status(late).innerText()).toMatch('Not done. The sheet “Proof” did not arrive.');
    expect(await late.evaluate(() => window.sweeptable.sheets())).toEqual(['Pops build']);
    await late.unroute('**/long-sheets.js');
    await insert.click();
    await expect.poll(() => status(late).innerText()).toMatch('“Proof” is inserted.');
    await late.close();
  });

  it('is gone already where undo took it', async () => {
    await sheet.insert('Lights on set');
    await sheet.undo('A3');
    await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
    await takeBack();
    await said().toBe('Not done. “Lights on set” is not in the workbook any more. Nothing was changed.');
  });

  it('stays where a cell of it looks otherwise', async () => {
    await sheet.insert('Lights on set');
    await sheet.click('A25');
    await sheet.page.keyboard.press('Control+b');
    await takeBack();
    await said().toMatch('has changed since it came in');
  });
});

describe('a copy as values in the workbench', () => {
  it('of an empty sheet is refused', async () => {
    await sheet.page.locator('[data-u-comp="sheet-bar-append-button"]').first().click();
    await expect.poll(() => sheet.sheets()).toHaveLength(2);
    await tab(sheet.page, 'Sheets').click();
    await sheet.pane.getByRole('button', { name: 'Copy this sheet as values' }).click();
    await said().toBe(
      'Not done. The sheet in view is empty. Nothing was copied. Go to a sheet with something on it.',
    );
    expect(await sheet.sheets()).toHaveLength(2);
  });

  it('shows what the sheet shows, in every cell, and needs nothing of it', async () => {
    await sheet.insert('Lights on set');
    await sheet.showsNear(KEY_LIGHT.cell, KEY_LIGHT.value);
    await sheet.enter('I18', '=SEQUENCE(3)');
    await sheet.shows('I20', 3);
    await sheet.enter('J18', '=SWEEP.FNUMBER("abc")');
    await sheet.shows('J18', '#VALUE!');
    await sheet.enter('K18', '=IF(TRUE,"=1+1")');
    await sheet.shows('K18', '=1+1');
    await sheet.enter('K19', '=1>0');
    await sheet.shows('K19', 1);
    // The second line says what to type: a copy has its own.
    const all = cellsTo(40).filter((a1) => a1 !== 'A2');
    const [texts, values] = [await sheet.texts(...all), await sheet.values(...all)];
    await copyAsValues(sheet, 'Lights on set values');
    await expect.poll(() => sheet.texts(...all)).toEqual(texts);
    // An empty text leaves an empty cell.
    expect(await sheet.values(...all)).toEqual(values.map((value) => (value === '' ? null : value)));
    const formulas = await sheet.page.evaluate(
      (cells) => cells.map((a1) => window.sweeptable.cell(a1).formula).filter(Boolean),
      all,
    );
    expect(formulas).toEqual([]);
    // Another reading there changes nothing here.
    await sheet.sheet('Lights on set');
    expect(await sheet.tables()).toMatchObject({ Lights: LIGHTS, Lights_2: LIGHTS });
    await sheet.enter('D33', '22');
    await sheet.sheet('Lights on set values');
    expect(await sheet.texts(...all)).toEqual(texts);
  });

  it('keeps notes and charts, grows without formulas, and is taken away by one undo', async () => {
    await sheet.insert('Lights on set');
    await sheet.showsNear(KEY_LIGHT.cell, KEY_LIGHT.value);
    await copyAsValues(sheet, 'Lights on set values');
    // nothing is to be typed, so that nothing is refused
    await sheet.enter('M33', '-3');
    await sheet.shows('M33', -3);
    await sheet.undo('A3');
    expect(await numbersOf(charts(sheet))).toHaveLength(6);
    await sheet.enter('A39', 'Alder 600');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights_2', LIGHTS_AND_ONE);
    expect((await sheet.cell('Q39')).formula).toBe('');
    await sheet.undo('A3');
    await sheet.undo('A3');
    await expect.poll(() => sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
    expect(await sheet.tables()).not.toHaveProperty('Lights_2');
  });
});
