import { describe, expect, it } from 'vitest';
import { COLUMNS, lightsOnSet } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

describe('rows pasted right below a table', () => {
  const { row } = lightsOnSet(() => sheet);
  const last = () => expect.poll(() => sheet.tables());

  it('belong to it as one word', async () => {
    await sheet.paste('A18', 'Alder 600');
    await last().toHaveProperty('Lights', 'A12:R18');
    await sheet.enter('H18', '16');
    await sheet.showsNear('J18', 16);
    await sheet.undo('A3');
    await sheet.undo('A3');
    await last().toHaveProperty('Lights', 'A12:R17');
    expect(await row(18)).toEqual(COLUMNS.map(() => ''));
  });
});
