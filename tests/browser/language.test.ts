import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Site, site } from './workbench';

let place: Site;

beforeAll(async () => {
  place = await site();
});
afterAll(() => place?.close());

it('shows the pane and its chart where the browser calls its language by no proper name', async () => {
  const page = await place.browser.newPage({ viewport: { width: 1400, height: 820 } });
  await page.addInitScript(() =>
    Object.defineProperty(Navigator.prototype, 'language', { get: () => 'en-US@posix', configurable: true }),
  );
  await page.goto(place.url);
  await page.getByRole('tab', { name: 'Charts' }).click();
  await expect.poll(() => page.locator('#pane canvas').count(), { timeout: 20_000 }).toBeGreaterThan(0);
  await page.close();
});
