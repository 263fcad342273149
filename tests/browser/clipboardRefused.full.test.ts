import { expect, it } from 'vitest';
import { Workbench } from './workbench';

it('a copy that the browser refuses is told as one', async () => {
  const sheet = await Workbench.open();
  await sheet.page.evaluate(() => {
    const refuse = () => Promise.reject(new DOMException('Write permission denied.', 'NotAllowedError'));
    Object.assign(navigator.clipboard, { write: refuse, writeText: refuse });
  });
  await sheet.click('B6');
  await sheet.page.keyboard.press('Control+c');
  await sheet.seen('This page may not use the clipboard').waitFor();
  expect(await sheet.page.locator('body').innerText()).toContain('Nothing is copied');
  await sheet.close();
});
