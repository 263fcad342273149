import { describe, expect, it } from 'vitest';
import type { Template } from '../../src/sheets/template';
import { TEMPLATES } from '../../src/sheets/templates';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { sheetOf } from '../hosts/excel/support/laid';
import { inExcel } from './excelPanePage';
import { onFormula } from './formulaInExcel';
import { PANE } from './ownPage';
import { axeFaults, checkPane, checkPaneAccess, LOOKS, status } from './paneChecks';
import { checkSheetsInExcel, offered } from './sheetsInExcel';

const VIEWS = ['Sheets', 'Explain', 'Functions'];

checkPane(VIEWS, onFormula);
checkPaneAccess(['light', 'dark', 'forced'], VIEWS, onFormula);

checkSheetsInExcel(
  TEMPLATES.flatMap((template) => offered(template).map((label) => [template, label] as const)),
  TEMPLATES,
);

const PROOF = TEMPLATES.find(({ id }) => id === 'proof') as Template;

it('the proof comes in without a network, once the page has had time to fetch it', () => {
  const workbook = new FakeWorkbook('Sheet1');
  return inExcel({ workbook }, async (page) => {
    await expect
      .poll(() => page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name)))
      .toContainEqual(expect.stringMatching(/long-sheets\.js$/));
    await page.context().setOffline(true);
    await page.getByRole('button', { name: `Insert ${PROOF.name}`, exact: true }).click();
    await expect.poll(() => status(page).innerText()).toMatch('“Proof” is inserted');
    await page.context().setOffline(false);
    expect(sheetOf(workbook, PROOF.name).cells.size).toBeGreaterThan(PROOF.blocks.length * 1000);
  });
});

describe.each(['help.html', 'support.html', 'privacy.html'])('the page %s', (name) => {
  it.each(['light', 'dark'] as const)('is read on a phone in %s colours without scrolling sideways', (look) =>
    inExcel(
      'no host',
      async (page) => {
        await page.emulateMedia(LOOKS[look]);
        await page.goto(new URL(name, page.url()).href);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
        expect(await axeFaults(page)).toEqual([]);
      },
      { ...PANE, width: 320 },
    ),
  );
});
