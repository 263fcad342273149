import { expect, it } from 'vitest';
import { anew, loadAnew } from './heldWorker';
import { Workbench } from './workbench';

it('a grid that has stumbled over itself says so, and what was typed comes back with the page', async () => {
  const sheet = await Workbench.open();
  await sheet.enter('B6', '32');
  await sheet.insert('Mains plan');
  // as if something else in the browser had moved a part of the page
  await sheet.page
    .locator('#grid [role="tab"]', { hasText: 'Mains plan' })
    .evaluate((name) => document.body.append(name));
  await sheet.pane.getByRole('button', { name: 'Take back' }).click();
  await expect
    .poll(() => sheet.standing.innerText())
    .toMatch(/cannot be shown any more.*entries are not lost/);
  expect(sheet.complaints.errors.join('\n')).toContain('removeChild');
  expect(await anew(sheet).count()).toBe(1);

  await loadAnew(sheet);
  await sheet.sheet('Pops build');
  await sheet.shows('B6', 32);
  expect(await sheet.standing.innerText()).toBe('');
  await sheet.close();
});
