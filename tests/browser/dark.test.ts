import { expect, it } from 'vitest';
import { LEGIBLE } from '../../src/hosts/workbench/grid/dark/nightColour';
import { drawn } from './cellColours';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

const DARK = 0.1;
const LIGHT = 0.7;
const ground = async (a1: string) => (await drawn(sheet, a1)).ground;
const paneIs = () =>
  sheet.page.locator('#pane .pane').evaluate((pane) => getComputedStyle(pane).backgroundColor);

it('is dark on a dark system, cells and all; and light there when somebody wants it', async () => {
  const light = await paneIs();
  expect(await ground('B5')).toBeGreaterThan(LIGHT);

  await sheet.page.emulateMedia({ colorScheme: 'dark' });
  await expect.poll(() => ground('B5')).toBeLessThan(DARK);
  expect(await paneIs()).not.toBe(light);
  // an input, an answer, a label, a remark, a section
  for (const cell of ['B6', 'B20', 'A6', 'D7', 'A4'])
    expect((await drawn(sheet, cell)).contrast, cell).toBeGreaterThanOrEqual(LEGIBLE);

  await sheet.command('Dark');
  await expect.poll(() => ground('B6')).toBeGreaterThan(LIGHT);
  expect(await paneIs()).toBe(light);
  // back as the system is, which is followed again from here on
  await sheet.command('Dark');
  await expect.poll(() => ground('B6')).toBeLessThan(DARK);
  await sheet.page.emulateMedia({ colorScheme: 'light' });
  await expect.poll(() => ground('B6')).toBeGreaterThan(LIGHT);
});
