import { expect, it } from 'vitest';
import { fills, oneDown, POWERS, warnedPowers } from './freezeWarnings';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1900 },
);

it('the warnings of Freeze check are with their heads after a reload too', async () => {
  const before = await warnedPowers(sheet);
  await sheet.rowMenu(54, 'rows above');
  await expect.poll(() => fills(sheet, POWERS.map(oneDown))).toEqual(before);
  await sheet.reload();
  await expect.poll(() => fills(sheet, POWERS.map(oneDown))).toEqual(before);
});
