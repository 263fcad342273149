import { expect, it } from 'vitest';
import { contrast, LEGIBLE, luminance, type Rgb } from '../../src/hosts/workbench/grid/dark/nightColour';
import { allInOneWorkbook } from './onePage';
import { lightsOnSet, TALL } from './lightsOnSet';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
}, TALL);
lightsOnSet(() => sheet);

const DISTANCE = 'Metres from the front of the light to the subject, above 0 and up to 20.';
const said = async (words: string): Promise<void> => {
  await expect.poll(() => sheet.refusal.allInnerTexts().then((all) => all.join())).toContain(words);
};
const quiet = () => expect.poll(() => sheet.refusal.count()).toBe(0);
const chooseTo = async (a1: string): Promise<void> => {
  const { x, y } = await sheet.page.evaluate((at) => window.sweeptable.place(at), a1);
  await sheet.page.keyboard.down('Shift');
  await sheet.page.mouse.click(x, y);
  await sheet.page.keyboard.up('Shift');
};
const inView = () => sheet.page.evaluate(() => window.sweeptable.inView());

it('goes back to the cell from wherever a click has led, and a button gives its value back', async () => {
  const [had] = await sheet.values('M33');
  await sheet.click('M33');
  await sheet.page.keyboard.type('-3');
  const { x, y } = await sheet.page.evaluate(() => window.sweeptable.place('C20'));
  await sheet.page.mouse.click(x, y);
  await said(DISTANCE);
  expect(await sheet.page.evaluate(() => window.sweeptable.selected())).toBe('M33');
  await sheet.page.getByRole('button', { name: 'Back to' }).click();
  await quiet();
  await sheet.shows('M33', had);

  await sheet.click('M33');
  await sheet.page.keyboard.type('-4');
  await sheet.page.locator('#grid').getByText('Pops build', { exact: true }).last().click();
  await said(DISTANCE);
  expect(await inView()).toBe('Lights on set');
  await sheet.told(DISTANCE);
  await sheet.shows('M33', had);
  // the keyboard is in the cells again, and the line above them shows what they have
  await sheet.page.keyboard.press('ArrowUp');
  await expect.poll(() => sheet.page.evaluate(() => window.sweeptable.selected())).toBe('M32');
});

it.each(['light', 'dark'] as const)('can be read in the %s', async (colorScheme) => {
  await sheet.page.emulateMedia({ colorScheme });
  await sheet.enter('M33', '-5');
  await said(DISTANCE);
  const colours = await sheet.refusal.evaluate((tip) => {
    const card = tip.parentElement?.parentElement;
    const rgb = (text: string): number[] => (text.match(/\d+/g) ?? []).slice(0, 3).map(Number);
    return {
      ink: rgb(getComputedStyle(tip).color),
      card: rgb(getComputedStyle(card ?? tip).backgroundColor),
    };
  });
  expect(contrast(colours.ink as unknown as Rgb, colours.card as unknown as Rgb)).toBeGreaterThan(LEGIBLE);
  // a card of the page, not a black one
  const isDark = luminance(colours.card as unknown as Rgb) < 0.1;
  expect(isDark).toBe(colorScheme === 'dark');
  expect(Math.max(...colours.card)).toBeGreaterThan(30);
  await sheet.told(DISTANCE);
});

it('keeps a word that is in no list, and a refusal of one of many cells refuses all', async () => {
  const before = await sheet.values('B33', 'L33', 'M33', 'M34');
  await sheet.enter('B33', 'sun');
  await sheet.told('Choose the part that the light plays');
  await sheet.click('L33');
  await chooseTo('M34');
  await sheet.page.keyboard.type('-8');
  await sheet.page.keyboard.press('Control+Enter');
  await sheet.told(DISTANCE);
  expect(await sheet.values('B33', 'L33', 'M33', 'M34')).toEqual(before);
});

it('tells of cells that were pasted or filled against their rules, and leaves them to be seen', async () => {
  const before = await sheet.values('M33', 'M34', 'M35');
  await sheet.paste('M33', '-1\n-2');
  await said('Not allowed in M33');
  await said('So is one more of these cells.');
  await sheet.shows('M34', -2);
  await sheet.click('C20');
  await quiet();
  await sheet.hover('M34');
  await expect.poll(() => sheet.page.locator('.tip').allInnerTexts()).toEqual([DISTANCE]);
  await sheet.undo('C21');
  await sheet.shows('M34', before[1]);

  await sheet.paste('M33', '-7');
  await said(DISTANCE);
  await sheet.click('M33');
  await chooseTo('M35');
  await sheet.page.keyboard.press('Control+d');
  await said('So are 2 more of these cells.');
  await sheet.undo('C21');
  await sheet.undo('C20');
  await expect.poll(() => sheet.values('M33', 'M34', 'M35')).toEqual(before);
});

it('stores nothing that is refused where a sheet comes in meanwhile, by the pane or by the grid', async () => {
  const [had] = await sheet.values('M33');
  await sheet.click('M33');
  await sheet.page.keyboard.type('-9');
  await sheet.pane.getByRole('button', { name: /^Insert empty\W+Heads$/ }).click();
  await expect.poll(() => sheet.sheets()).toContain('Heads');
  await sheet.told(DISTANCE);
  expect(await sheet.values('M33')).toEqual([had]);

  await sheet.click('M33');
  await sheet.page.keyboard.type('-9');
  await sheet.page.getByRole('button', { name: 'Add a sheet' }).click();
  await expect.poll(() => sheet.sheets()).toContain('Sheet1');
  await sheet.told(DISTANCE);
  expect(await sheet.values('M33')).toEqual([had]);
});

it('lays a whole job while a value is refused', async () => {
  await sheet.startOver();
  await sheet.click('B7');
  await sheet.page.keyboard.type('-5');
  await sheet.page.getByRole('button', { name: 'New job' }).click();
  await sheet.told('A length in millimetres, above 0.');
  await sheet.shows('B7', 120);
  expect(await sheet.sheets()).toEqual(['Pops build', 'Heads', 'Pops plan', 'Set card']);
});
