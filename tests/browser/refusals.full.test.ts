import { describe, expect, it } from 'vitest';
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

it('has what was refused chosen whole by Ctrl+A, wherever somebody is in it', async () => {
  const { keyboard } = sheet.page;
  const [had] = await sheet.values('M33');
  await sheet.enter('M33', 'xyz');
  await said(DISTANCE);
  await keyboard.press('End');
  await keyboard.press('Control+a');
  await keyboard.type('2');
  await keyboard.press('Enter');
  await sheet.shows('M33', 2);
  await quiet();
  await sheet.undo('M34');
  await sheet.shows('M33', had);
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

  // taken back where it was pasted
  await sheet.paste('M33', '-7');
  await said(DISTANCE);
  await sheet.page.keyboard.press('Control+z');
  await sheet.shows('M33', before[0]);
  await quiet();

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
  await expect.poll(() => sheet.sheets()).toContain('Own sheet 1');
  await sheet.told(DISTANCE);
  expect(await sheet.values('M33')).toEqual([had]);
});

it('lays a whole job while a value is refused', async () => {
  await sheet.startOver();
  await sheet.click('B7');
  await sheet.page.keyboard.type('-5');
  await sheet.page.getByRole('button', { name: 'New job' }).click();
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build', 'Heads', 'Pops plan', 'Set card']);
  await sheet.told('A length in millimetres, above 0.');
  await sheet.shows('B7', 120);
});

it('keeps what was refused in its cell when answers of other cells come in', async () => {
  const { page } = sheet;
  await sheet.startOver();
  await page.getByRole('button', { name: 'New job' }).click();
  await expect.poll(() => page.evaluate(() => window.sweeptable.selected())).toBe('A44');
  await sheet.goTo('B44');
  const answered = page.evaluate(() => window.sweeptable.calculated());
  await page.keyboard.type('0');
  await page.keyboard.press('Enter');
  await said('a whole number from 1 to 99');
  await answered;
  // a figure behind it
  await page.keyboard.press('End');
  await page.keyboard.type('5');
  await page.keyboard.press('Enter');
  await quiet();
  await sheet.shows('B44', 5);
});

it.each([
  ['B5', 'elf', 'cannot be read as an f-number'],
  ['B6', '-5', 'It must be above 0, not -5.'],
  // cells of texts, which show nothing of what they hold
  ['B9', '1//60', 'cannot be read as a number of stops'],
  ['B13', 'abc', 'cannot be read as a shutter time'],
  ['B13', '-5', 'It must be above 0, not -5.'],
])('says at %s that %s is nothing that can be read, and keeps it', async (a1, typed, reason) => {
  await sheet.startOver();
  await sheet.enter(a1, typed);
  await said(`${a1} cannot be used as it is`);
  await said(reason);
  expect(String((await sheet.values(a1))[0])).toBe(typed);
  await sheet.click('F6');
  await quiet();
});

describe('of what can be read nowhere', () => {
  const alone = () => expect.poll(() => sheet.refusal.count()).toBe(1);

  it('tells in one tip after a pause who types on at once, and again where its cell is chosen', async () => {
    await sheet.startOver();
    await sheet.click('B5');
    await quickly('e', 'l', 'f', 'Enter', 'x', 'y', 'z', 'Enter');
    await said('B6 cannot be used as it is');
    await said('Nor can B5.');
    await alone();
    await sheet.click('F6');
    await quiet();
    await sheet.click('B5');
    await said('B5 cannot be used as it is');
    await said('"elf" cannot be read as an f-number');
    await sheet.enter('B5', 'f/11');
    await sheet.click('B6');
    await said('B6 cannot be used as it is');
    expect(await sheet.refusal.innerText()).not.toContain('B5');
  });

  it('tells beside no other tip', async () => {
    await sheet.startOver();
    await sheet.enter('B6', 'xyz');
    await said('B6 cannot be used as it is');
    await sheet.enter('B7', '-5');
    await said('Not taken');
    await alone();
    await sheet.told('A length in millimetres, above 0.');
    await sheet.click('B6');
    await said('B6 cannot be used as it is');
    await alone();
  });

  it('tells no more of what was taken back at once', async () => {
    await sheet.startOver();
    const [had] = await sheet.values('B13');
    await sheet.enter('B13', 'abd');
    await said('B13 cannot be used as it is');
    await sheet.page.keyboard.press('Control+z');
    await expect.poll(() => sheet.values('B13')).toEqual([had]);
    await quiet();
  });

  it('tells of what was pasted', async () => {
    await sheet.startOver();
    await sheet.paste('B5', 'elf\nxyz');
    await said('B5 cannot be used as it is');
    await said('Nor can B6.');
    await alone();
  });
});

it('says so where a table has no answer yet, leads back to the cell, and is quiet about what can be read', async () => {
  await sheet.startOver();
  await sheet.insert('Heads');
  await sheet.goTo('AC44');
  await sheet.page.keyboard.type('f/');
  await sheet.page.keyboard.press('Enter');
  await said('cannot be read as an f-number');
  await expect.poll(() => sheet.texts('R5')).toContain('row 1 is not ready: reading');
  await sheet.page.getByRole('button', { name: 'Back to AC44' }).click();
  await expect.poll(() => sheet.page.evaluate(() => window.sweeptable.selected())).toBe('AC44');
  await sheet.page.keyboard.type('8');
  await sheet.page.keyboard.press('Enter');
  await sheet.shows('AC44', 8);
  await expect.poll(() => sheet.texts('R5')).not.toContain('row 1 is not ready: reading');
  await quiet();
  // a name is whatever it is
  await sheet.goTo('A44');
  await sheet.page.keyboard.type('elf');
  await sheet.page.keyboard.press('Enter');
  await sheet.shows('A44', 'elf');
  await expect.poll(() => sheet.texts('A11')).toEqual(['elf']);
  await quiet();
  // what comes next would look its heads up here
  await sheet.startOver();
});

/** Keys as fast as they go, one pressed before the last is let go. */
const quickly = (...keys: string[]) => Promise.all(keys.map((key) => sheet.page.keyboard.press(key)));
const typeAgain = (a1: string) => sheet.page.getByRole('button', { name: `Back to ${a1}` }).click();

describe('who types on before it can be read that a value is not taken', () => {
  it('has the next value in the next cell, and finds the refused one in the tip', async () => {
    const before = await sheet.values('M33', 'M34', 'M35');
    await sheet.click('M33');
    await quickly('-', '5', 'Enter', '1', '.', '4', 'Enter');
    await sheet.shows('M34', 1.4);
    await said('M33: “-5”. ' + DISTANCE);
    await sheet.shows('M33', before[0]);
    await sheet.shows('M35', before[2]);
    // it stays while another cell is typed into
    await sheet.enter('M35', '1.7');
    await sheet.shows('M35', 1.7);
    await said('M33: “-5”.');
    // and leads back to the cell, with what was typed
    await typeAgain('M33');
    await expect.poll(() => sheet.page.evaluate(() => window.sweeptable.selected())).toBe('M33');
    await said('Back to');
    await sheet.page.keyboard.press('End');
    for (let n = 0; n < 2; n++) await sheet.page.keyboard.press('Backspace');
    await sheet.page.keyboard.type('5');
    await sheet.page.keyboard.press('Enter');
    await sheet.shows('M33', 5);
    await quiet();
    for (const a1 of ['M34', 'M35', 'M33']) await sheet.undo(a1);
    await expect.poll(() => sheet.values('M33', 'M34', 'M35')).toEqual(before);
  });

  it('goes on where Tab or an arrow led', async () => {
    const before = await sheet.values('M33', 'N33', 'M34');
    for (const [key, next] of [
      ['Tab', 'N33'],
      ['ArrowRight', 'N33'],
      ['ArrowDown', 'M34'],
    ] as const) {
      await sheet.click('M33');
      await quickly('-', '5', key, '1', '.', '9', 'Enter');
      await sheet.shows(next, 1.9);
      await said('M33: “-5”.');
      await sheet.page.getByRole('button', { name: 'Leave as it was' }).click();
      await quiet();
      await sheet.undo('M33');
      await expect.poll(() => sheet.values('M33', 'N33', 'M34')).toEqual(before);
    }
  });

  it('finds all that was refused in one tip', async () => {
    await sheet.click('M33');
    await quickly('-', '5', 'Enter', '-', '6', 'Enter', '-', '7', 'Enter');
    await said('M34: “-6”.');
    await said('M33: “-5”.');
    await sheet.page.keyboard.press('Escape');
    await sheet.page.getByRole('button', { name: 'Leave as it was' }).click();
    await quiet();
  });
});

it('a refusal is no step: undo and redo go on from what was done before it', async () => {
  const [had] = await sheet.values('M33');
  await sheet.enter('M33', '1.5');
  await sheet.undo('M34');
  await sheet.shows('M33', had);
  await sheet.enter('M34', '-2');
  await sheet.told(DISTANCE);
  await sheet.page.keyboard.press('Control+y');
  await sheet.shows('M33', 1.5);
  await sheet.enter('M34', '-2');
  await sheet.told(DISTANCE);
  await sheet.page.keyboard.press('Control+z');
  await sheet.shows('M33', had);
});

it('tells of a replacement that a rule does not allow, and keeps ratios and dates out of numbers', async () => {
  const before = await sheet.values('M33', 'M34');
  await sheet.click('M33');
  await sheet.page.keyboard.press('Control+h');
  const field = (name: string) => sheet.page.getByRole('textbox', { name });
  await field('Find').fill(String(before[0]));
  await field('Replace by').fill('-3');
  await sheet.page.getByRole('button', { name: 'Replace', exact: true }).click();
  const told = sheet.page.getByRole('search').getByRole('status');
  await expect.poll(() => told.innerText()).toContain(`Not allowed in M33: ${DISTANCE} It is marked.`);
  await sheet.page.keyboard.press('Escape');
  await sheet.undo('M34');
  await sheet.shows('M33', before[0]);

  // a time of day and a date, if the grid had its way
  for (const words of ['3:1', '1/4', '8-11']) {
    await sheet.enter('M34', words);
    await sheet.told(DISTANCE);
    await sheet.shows('M34', before[1]);
  }
  await sheet.enter('M34', '80 cm');
  await sheet.shows('M34', 0.8);
  await sheet.undo('M33');
  await sheet.enter('G20', '3:1');
  await sheet.enter('G21', '=SWEEP.MAGNIFICATIONLOSS(G20)');
  // 2·log2(1 + 3)
  await sheet.showsNear('G21', 4);
});
