import { expect, it } from 'vitest';
import { checkWarnings, fills, oneDown, POWERS, warnedPowers } from './freezeWarnings';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1900 },
);

it('the warnings of Freeze check go with their heads where a row comes in above the first, and after a reload too', async () => {
  const before = await warnedPowers(sheet);
  await checkWarnings(sheet, before, 54);
  await sheet.rowMenu(54, 'rows above');
  await expect.poll(() => fills(sheet, POWERS.map(oneDown))).toEqual(before);
  await sheet.reload();
  await expect.poll(() => fills(sheet, POWERS.map(oneDown))).toEqual(before);
});

it('the warnings of Freeze check go with their heads where a row comes in above all of them, and back with undo', async () => {
  const before = await warnedPowers(sheet);
  await checkWarnings(sheet, before, 27);
});
