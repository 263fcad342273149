import { expect, it } from 'vitest';
import { TALL } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { status } from './paneChecks';
import { copyAsValues } from './sheetsInWorkbench';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

const said = () => expect.poll(() => status(sheet.page).innerText());
const takeBack = () => sheet.pane.getByRole('button', { name: 'Take back' }).click();

it('a sheet with nothing to type in comes without a demo job, and is taken back', async () => {
  await sheet.pane.getByRole('button', { name: 'Insert Proof', exact: true }).click();
  await said().toBe('“Proof” is inserted. Ctrl+Z takes it away again.');
  await takeBack();
  await said().toMatch('“Proof” is taken away again.');
  expect(await sheet.sheets()).toEqual(['Pops build']);
});

it('a copy as values asks for nothing', async () => {
  const look = (a1: string) => sheet.page.evaluate((at) => window.sweeptable.look(at), a1);
  const plain = (await look('B20')).fill;
  const input = await look('B5');
  await copyAsValues(sheet, 'Pops build values');
  const [start] = await sheet.texts('A2');
  expect(start).toBe('The values as they were when this copy was made. Nothing here calculates.');
  expect((await look('B5')).fill).toBeUndefined();
  expect((await look('B5')).ink).toBe(input.ink);
  expect((await look('B20')).fill).toBe(plain);
  // no rule is left that could refuse it
  await sheet.enter('B8', '-7');
  await sheet.shows('B8', -7);
});
