import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

const offered = () =>
  sheet.page
    .locator('#grid [data-u-command]')
    .evaluateAll((all) => all.map((each) => each.getAttribute('data-u-command') ?? ''));

it('shows numbers as what a studio has them of, and offers nothing of accounts', async () => {
  const all = (await offered()).join(' ');
  expect(all).toContain('sweeptable-shown-as');
  expect(all).not.toMatch(/currency|insert-function|numfmt\.panel|merge/);
  await sheet.enter('F6', '12.5');
  await sheet.click('F6');
  const choose = async (words: string): Promise<void> => {
    await sheet.page.locator('#grid').getByText('Shown as').first().click();
    const entry = sheet.page.getByText(words, { exact: true }).last();
    await entry.click();
    await entry.waitFor({ state: 'detached' });
  };
  for (const [words, text] of [
    ['Metres', '12.50 m'],
    ['f-number', 'f/12.5'],
    ['Watt-seconds', '12.5 Ws'],
    ['Plain number', '12.5'],
  ] as const) {
    await choose(words);
    await expect.poll(async () => (await sheet.cell('F6')).text, { message: words }).toBe(text);
  }
});

it('has what takes a sheet away last in the menu of its tab, and no protection that no file would keep', async () => {
  await sheet.page
    .locator('#grid')
    .getByText('Pops build', { exact: true })
    .last()
    .click({ button: 'right' });
  // once the menu has opened and stands still
  await sheet.seen('Copy this sheet').hover();
  const y = async (words: string) => (await sheet.seen(words).last().boundingBox())?.y;
  const last = await y('Delete');
  for (const words of ['Copy this sheet', 'Rename', 'Colour of the tab', 'Hide', 'Show hidden sheets'])
    expect(await y(words), words).toBeLessThan(last ?? 0);
  expect(await sheet.page.getByText(/protect/i).count()).toBe(0);
  await sheet.page.keyboard.press('Escape');
});

it('has the name of a sheet written by a slow double click; Escape gives it up, and a name that is pasted keeps its blanks', async () => {
  const { page } = sheet;
  const name = page.locator('[data-u-comp="slide-tab-item"][aria-selected="true"]');
  const written = name.locator('[contenteditable="true"]');
  const inView = () => page.evaluate(() => window.sweeptable.inView());
  const slowly = async (): Promise<void> => {
    await name.click();
    await page.waitForTimeout(400);
    await page.mouse.down({ clickCount: 2 });
    await page.mouse.up({ clickCount: 2 });
    await written.waitFor();
  };
  await slowly();
  await page.keyboard.type('Vase');
  await page.keyboard.press('Escape');
  await expect.poll(() => written.count()).toBe(0);
  expect(await inView()).toBe('Pops build');
  expect(await name.innerText()).toBe('Pops build');

  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate(() => navigator.clipboard.writeText(' Vase and\tplinth\n'));
  await slowly();
  await page.keyboard.press('Control+v');
  await page.keyboard.press('Enter');
  await expect.poll(inView).toBe('Vase and plinth');
});

const open = (command: string) =>
  sheet.page.locator(`#grid [data-u-command="${command}"]`).locator('[aria-haspopup]').first().click();

it('offers no look, rule or edge that a file would lose, and names each edge', async () => {
  const menu = sheet.page.locator('[data-radix-popper-content-wrapper]').last();
  await sheet.click('H8');
  await open('sheet.command.set-border-basic');
  const edges = menu.getByRole('button');
  await edges.first().waitFor();
  const names = await edges.evaluateAll((all) => all.map((each) => each.getAttribute('aria-label') ?? ''));
  expect(names.filter((name) => name !== '')).toHaveLength(10);
  expect(names).toContain('Around all');
  await sheet.page.keyboard.press('Escape');

  await sheet.page
    .locator('#grid [data-u-command="sheet.operation.open.conditional.formatting.panel"]')
    .first()
    .click();
  await menu.getByText('A formula', { exact: true }).waitFor();
  expect(await menu.innerText()).not.toMatch(/bars|signs/i);
  await sheet.page.keyboard.press('Escape');
});

it('a new rule for what may be typed refuses nothing yet, and leaves the rules of other cells', async () => {
  await sheet.click('B5');
  await sheet.page.keyboard.press('Control+a');
  await sheet.page.locator('#grid [data-u-command="sheet.menu.data-validation"]').first().click();
  await sheet.page.getByText('Add a rule', { exact: true }).last().click();
  await sheet.page.getByText('Anything', { exact: true }).waitFor();
  await sheet.page.getByRole('button', { name: 'Done' }).click();
  await sheet.enter('B5', 'two');
  await expect.poll(() => sheet.refusal.count()).toBe(1);
});

it('leads from beside the formula to the functions, and names what ends the writing while somebody writes', async () => {
  await sheet.click('H8');
  await sheet.page.getByRole('button', { name: 'Functions', exact: true }).click();
  await expect.poll(() => sheet.page.evaluate(() => document.activeElement?.id)).toBe('pane-find');
  await sheet.click('H9');
  await sheet.page.keyboard.type('12');
  await sheet.page.getByRole('button', { name: 'Leave as it was' }).click();
  expect(await sheet.values('H9')).toEqual([null]);
  await sheet.click('H9');
  await sheet.page.keyboard.type('12');
  await sheet.page.getByRole('button', { name: 'Take what is written' }).click();
  await sheet.shows('H9', 12);
});

/** Chooses these cells; what stands below them follows a moment later. */
const chooseCells = async (from: string, to: string): Promise<void> => {
  await sheet.click(from);
  const { x, y } = await sheet.page.evaluate((at) => window.sweeptable.place(at), to);
  await sheet.page.keyboard.down('Shift');
  await sheet.page.mouse.click(x, y);
  await sheet.page.keyboard.up('Shift');
};
const below = () => sheet.page.locator('#grid footer').innerText();

it('sums below the cells what can be summed, in its own unit, and nothing else', async () => {
  // 120 mm and 150 mm, by hand
  await chooseCells('B7', 'B8');
  await expect.poll(below).toContain('Sum: 270 mm');
  // two f-numbers; then lengths with times, and a loss with times
  await chooseCells('B5', 'B6');
  await expect.poll(below).not.toContain('Sum');
  for (const [from, to, filled] of [
    ['B7', 'B11', 5],
    ['B9', 'B11', 3],
  ] as const) {
    await chooseCells(from, to);
    await expect.poll(below).toContain(`Filled cells: ${filled}`);
    expect(await below(), `${from} to ${to}`).not.toContain('Sum');
  }
});
