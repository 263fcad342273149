import { describe, expect, it } from 'vitest';
import { TEMPLATES } from '../../src/sheets/templates';
import { inExcel } from './excelPanePage';
import { onFormula } from './formulaInExcel';
import { PANE } from './ownPage';
import { axeFaults, checkPane, checkPaneAccess, LOOKS } from './paneChecks';
import { checkSheetsInExcel, offered } from './sheetsInExcel';

const VIEWS = ['Sheets', 'Explain', 'Functions'];

checkPane(VIEWS, onFormula);
checkPaneAccess(['light', 'dark', 'forced'], VIEWS, onFormula);

checkSheetsInExcel(
  TEMPLATES.flatMap((template) => offered(template).map((label) => [template, label] as const)),
  TEMPLATES,
);

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
