import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { status } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('what the pane says of a sheet that came in goes with the workbook', async () => {
  await sheet.insert('Lights on set');
  await sheet.startOver();
  expect(await status(sheet.page).innerText()).toBe('');
  expect(await sheet.pane.getByRole('button', { name: 'Take back' }).count()).toBe(0);
});
