import { expect, it } from 'vitest';
import { Hand } from './hand';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

const selected = () => sheet.page.evaluate(() => window.sweeptable.selected());
const placeOf = (a1: string) => sheet.page.evaluate((at) => window.sweeptable.place(at), a1);
const zoom = () => sheet.page.locator('#grid footer').innerText();

it('scrolls by a swipe, chooses by a tap, writes by another, chooses several by a hold, and zooms by two fingers', async () => {
  const { page } = sheet;
  const hand = await Hand.on(page);
  const place = await placeOf('B10');
  await hand.tap(place);
  await expect.poll(selected).toBe('B10');
  await hand.tap(place);
  // in place of 1.2 seconds, which lie open
  await page.keyboard.press('Control+a');
  await page.keyboard.insertText('2');
  await page.keyboard.press('Enter');
  await sheet.shows('B10', 2);

  await hand.hold(place, await placeOf('C13'));
  await expect.poll(selected).toBe('B10:C13');

  // from the middle of row 10 to that of row 13
  const far = (await placeOf('B13')).y - place.y;
  expect(far).toBeGreaterThan(3 * 20);
  await hand.swipe({ x: place.x, y: place.y + far }, place, { rests: true });
  await expect.poll(selected).toBe('B10:C13');
  await hand.tap(place);
  await expect.poll(selected).toBe('B13');

  await hand.pinch({ x: place.x, y: place.y + 100 }, 120, 180);
  await expect.poll(zoom).toContain('150%');
  await hand.pinch({ x: place.x, y: place.y + 100 }, 180, 120);
  await expect.poll(zoom).toContain('100%');
  await hand.close();
});
