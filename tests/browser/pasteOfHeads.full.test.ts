import { expect, it } from 'vitest';
import { LIGHTS } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1500 },
);

it('a paste counts eight heads where six have room, and what stands below goes on', async () => {
  await sheet.insert('Lights on set');
  const [first] = await sheet.values('A33');
  await sheet.enter('C40', '7');
  await sheet.shows('C40', 7);
  const heads = Array.from({ length: 8 }, (_, i) => `Head ${i}\tambient\t\t${i + 8}`).join('\n');
  await sheet.paste('A33', heads);
  await expect.poll(() => sheet.tables()).toHaveProperty('Lights', 'A32:AO40');
  await sheet.shows('A40', 'Head 7');
  expect((await sheet.cell('Q40')).formula).toBe((await sheet.cell('Q33')).formula.replaceAll('33', '40'));
  await sheet.shows('C42', 7);
  await sheet.page.keyboard.press('Control+z');
  await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS);
  await sheet.shows('C40', 7);
  await sheet.shows('A33', first);
});
