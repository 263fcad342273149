import { expect, inject, it } from 'vitest';
import { browser } from './browser';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let workbench: Workbench;
eachItsWorkbook((fresh) => {
  workbench = fresh;
});

it('shows the pane and its chart where the browser calls its language by no proper name', async () => {
  const page = await (await browser()).newPage({ viewport: { width: 1400, height: 820 } });
  await page.addInitScript(() =>
    Object.defineProperty(Navigator.prototype, 'language', { get: () => 'en-US@posix', configurable: true }),
  );
  await page.goto(inject('workbench'));
  await page.getByRole('tab', { name: 'Sheets' }).waitFor();
  // Scrolls to the chart, once there is something to scroll.
  const reach = async () => {
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+Alt+5');
    return page.locator('.charts canvas').count();
  };
  await expect.poll(reach, { timeout: 20_000 }).toBeGreaterThan(0);
  await page.close();
});

it('speaks in words, never in keys of a dictionary, while a long sheet is calculated too', async () => {
  await workbench.page.evaluate(() => {
    const seen = new Set<string>();
    Object.assign(window, { seen });
    const look = (): void => {
      for (const line of document.body.innerText.split('\n')) seen.add(line);
    };
    // once a frame, as often as a person could see it
    let frame = 0;
    const soon = (): void => {
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(look);
    };
    new MutationObserver(soon).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
    });
  });
  await workbench.pane.getByRole('tab', { name: 'Sheets' }).click();
  await workbench.pane.getByRole('button', { name: /^Insert\W+Proof$/ }).click();
  // the checks of each kind, counted above their table
  const counts = () =>
    workbench.page.evaluate(() =>
      ['B5', 'B6', 'B7'].reduce((sum, cell) => sum + Number(window.sweeptable.cell(cell).value), 0),
    );
  await expect.poll(counts, { timeout: 60_000 }).toBeGreaterThan(800);
  const seen = await workbench.page.evaluate(() => [...(window as unknown as { seen: Set<string> }).seen]);
  expect(seen).toContain('Proof');
  expect(seen.filter((line) => /^[a-z-]+(\.[a-z-]+)+$/i.test(line))).toEqual([]);
  await workbench.reload();
});
