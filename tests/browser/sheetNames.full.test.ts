import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

/** The grid waits half a second for a press to become one that carries the name. */
const HELD = 700;

const nameOf = (words: string) =>
  sheet.page.locator('#grid [data-u-comp="slide-tab-bar"] [role="tab"]').filter({ hasText: words });
const boxOf = async (words: string) => {
  const box = await nameOf(words).boundingBox();
  if (!box) throw new Error(`There is no name "${words}".`);
  return box;
};
const middleOf = async (words: string) => {
  const { x, y, width, height } = await boxOf(words);
  return { x: x + width / 2, y: y + height / 2 };
};
const names = () => sheet.page.locator('#grid [data-u-comp="slide-tab-bar"] > *').allInnerTexts();

/** A button of the pane, while the mouse is elsewhere. */
const press = (name: RegExp) =>
  sheet.pane.getByRole('button', { name }).evaluate((button: HTMLElement) => button.click());

/** Presses on the name of the sheet in view until it floats. */
async function take(words: string): Promise<void> {
  const { x, y } = await middleOf(words);
  await sheet.page.mouse.move(x, y);
  await sheet.page.mouse.down();
  await expect.poll(() => nameOf(words).evaluate((tab) => getComputedStyle(tab).position)).toBe('fixed');
}

it('stay where they are when one was pressed twice and left again at once', async () => {
  const before = await boxOf('Pops build');
  await nameOf('Pops build').dblclick();
  await sheet.page.keyboard.press('Enter');
  await sheet.page.waitForTimeout(HELD);
  expect(await boxOf('Pops build')).toEqual(before);
  expect(await nameOf('Pops build').evaluate((tab) => getComputedStyle(tab).position)).not.toBe('fixed');
});

it('are carried to another place, and the sheet with them', async () => {
  await sheet.insert('Mains plan');
  await take('Mains plan');
  const { x, y } = await boxOf('Pops build');
  await sheet.page.mouse.move(x + 2, y + 10, { steps: 8 });
  await sheet.page.mouse.up();
  await expect.poll(() => sheet.sheets()).toEqual(['Mains plan', 'Pops build']);
  await expect.poll(names).toEqual(['Mains plan', 'Pops build']);
});

it('are laid down when the sheet goes while its name is carried, and all around the cells stays', async () => {
  await sheet.insert('Mains plan');
  const { length } = await sheet.page.locator('#grid [data-u-command]').all();
  await take('Mains plan');
  await press(/^Take back$/);
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
  await sheet.page.mouse.up();
  await expect.poll(names).toEqual(['Pops build']);
  expect(length).toBeGreaterThan(0);
  expect(await sheet.page.locator('#grid [data-u-command]').count()).toBe(length);
});

it('are laid down when another sheet comes while one is carried', async () => {
  await take('Pops build');
  await sheet.page.mouse.move(300, 400, { steps: 4 });
  await press(/^Insert with the demo job\W+Mains plan$/);
  await sheet.page.mouse.up();
  await expect.poll(names).toEqual(['Pops build', 'Mains plan']);
  const [first, second] = [await boxOf('Pops build'), await boxOf('Mains plan')];
  expect(first.x + first.width).toBeLessThan(second.x + 1);
  expect(first.y).toBe(second.y);
});

it('lead to their sheet, and the keyboard to its cells, when one is clicked on while another is written', async () => {
  const { page } = sheet;
  await sheet.insert('Mains plan');
  await sheet.sheet('Pops build');
  await nameOf('Pops build').dblclick();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('Pops');
  await nameOf('Mains plan').click();
  await expect.poll(() => page.evaluate(() => window.sweeptable.inView())).toBe('Mains plan');
  await page.keyboard.type('4');
  await page.keyboard.press('Enter');
  await sheet.shows('B5', 4);
  expect(await sheet.sheets()).toEqual(['Pops', 'Mains plan']);
});

it('give the keyboard to the cells when one of a sheet that was not in view is clicked on twice', async () => {
  const { page } = sheet;
  await sheet.insert('Mains plan');
  await nameOf('Pops build').dblclick();
  await page.keyboard.type('16');
  await page.keyboard.press('Enter');
  await sheet.shows('B5', 16);
});

it('give the keyboard to the cells once one has been written, and stay as they were by Escape', async () => {
  const { page } = sheet;
  const isWritten = () => nameOf('').locator('[contenteditable="true"]').count();
  await nameOf('Pops build').dblclick();
  await page.keyboard.type('Pops');
  await page.keyboard.press('Enter');
  await expect.poll(() => sheet.sheets()).toEqual(['Pops']);
  await expect.poll(isWritten).toBe(0);
  await page.keyboard.press('ControlOrMeta+z');
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
  await nameOf('Pops build').dblclick();
  await page.keyboard.type('Nothing');
  await page.keyboard.press('Escape');
  await expect.poll(isWritten).toBe(0);
  await expect.poll(names).toEqual(['Pops build']);
  await page.keyboard.type('16');
  await page.keyboard.press('Enter');
  await sheet.shows('B5', 16);
  expect(await sheet.sheets()).toEqual(['Pops build']);
});

it('bring another sheet into the formula that is being written, and leave what is written as it is', async () => {
  const { page } = sheet;
  await sheet.insert('Mains plan');
  await sheet.sheet('Pops build');
  await sheet.click('H8');
  await page.keyboard.type('=');
  await nameOf('Mains plan').click();
  await expect.poll(() => page.evaluate(() => window.sweeptable.inView())).toBe('Mains plan');
  await sheet.click('B5');
  await page.keyboard.type('*2');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => window.sweeptable.inView())).toBe('Pops build');
  await expect
    .poll(() => sheet.page.evaluate(() => window.sweeptable.cell('H8').formula))
    .toBe("='Mains plan'!B5*2");
});
