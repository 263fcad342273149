import { expect, it } from 'vitest';
import { TALL } from './lightsOnSet';
import { checkCopyAsValues } from './newSheetsChecks';
import { eachItsWorkbook } from './onePage';
import { asSheetsHost } from './sheetsInWorkbench';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

checkCopyAsValues((use) => use(asSheetsHost(sheet)));

it('the pane offers nothing that makes no sense beside the grid', async () => {
  expect(await sheet.pane.getByRole('button', { name: /Recalculate|lost names/ }).count()).toBe(0);
  expect(await sheet.pane.getByText('undo list').count()).toBe(0);
});
