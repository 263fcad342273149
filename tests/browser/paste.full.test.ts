import { describe, expect, it } from 'vitest';
import { COLUMNS, LIGHTS, LIGHTS_AND_ONE, TALL, lightsOnSet } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

describe('rows pasted right below a table', () => {
  const { row } = lightsOnSet(() => sheet);
  const last = () => expect.poll(() => sheet.tables());

  it('belong to it as one word', async () => {
    await sheet.paste('A39', 'Alder 600');
    await last().toHaveProperty('Lights', LIGHTS_AND_ONE);
    await sheet.enter('D39', '16');
    await sheet.showsNear('Q39', 16);
    await sheet.undo('A3');
    await sheet.undo('A3');
    await last().toHaveProperty('Lights', LIGHTS);
    expect(await row(39)).toEqual(COLUMNS.map(() => ''));
  });
});
