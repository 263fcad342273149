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
  const entry = sheet.page.getByText('Copy this sheet', { exact: true });
  // once the menu has opened and stands still
  await entry.hover();
  const y = async (words: string) =>
    (await sheet.page.getByText(words, { exact: true }).last().boundingBox())?.y;
  const last = await y('Delete');
  for (const words of ['Copy this sheet', 'Rename', 'Colour of the tab', 'Hide', 'Show hidden sheets'])
    expect(await y(words), words).toBeLessThan(last ?? 0);
  expect(await sheet.page.getByText(/protect/i).count()).toBe(0);
  await sheet.page.keyboard.press('Escape');
});
