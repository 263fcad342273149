import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('cells of sheets that have gone meanwhile are not checked, and nothing fails over them', async () => {
  const { page } = sheet;
  // what the page does when it has time: not before the sheets have gone
  const held = await page.evaluateHandle(() => {
    const all: IdleRequestCallback[] = [];
    const { requestIdleCallback: usual } = window;
    window.requestIdleCallback = (later) => all.push(later);
    return { all, usual };
  });
  await sheet.pane.getByRole('button', { name: 'New job', exact: true }).click();
  await expect.poll(() => held.evaluate(({ all }) => all.length)).toBeGreaterThan(0);
  await expect.poll(() => sheet.sheets()).toHaveLength(4);
  await page.keyboard.press('Control+z');
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
  await held.evaluate(async ({ all, usual }) => {
    window.requestIdleCallback = usual;
    for (const each of all) each({ didTimeout: false, timeRemaining: () => 50 });
    await new Promise((resolve) => setTimeout(resolve));
  });
  await held.dispose();
  expect(sheet.complaints.errors).toEqual([]);
});
