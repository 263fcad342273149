import { expect, it } from 'vitest';
import { COLUMNS, TALL } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

it('a sheet inserted from the pane shows no error when it is empty', async () => {
  for (const name of ['Lights on set', 'Pops build']) {
    await sheet.insert(name, { filled: false });
    const columns = name === 'Lights on set' ? COLUMNS : COLUMNS.slice(0, 18);
    const cells = Array.from({ length: 48 }, (_, i) => columns.map((column) => `${column}${i + 1}`)).flat();
    await expect
      .poll(async () => (await sheet.texts(...cells)).filter((text) => text.startsWith('#')))
      .toEqual([]);
  }
});
