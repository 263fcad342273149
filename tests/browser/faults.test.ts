import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { holdWorker, passTime } from './heldWorker';
import { breakable, checkLayFailures } from './layChecks';
import { Workbench } from './workbench';

// One page in which the grid and its worker fail when a test says so.
let sheet: Workbench;

beforeAll(async () => {
  sheet = await Workbench.open({
    async before(page) {
      await holdWorker(page);
      await breakable(page);
    },
  });
});
afterAll(() => sheet?.close());
afterEach(() => expect(sheet.complaints).toEqual({ errors: [], outside: [] }));

it('a sheet that cannot be laid leaves the workbook as it was, and it says why', async () => {
  await checkLayFailures(sheet, [['sheet.mutation.set-range-values', 'refuses']]);
  await sheet.sheet('Pops build');
});

it('a worker that was only busy for long takes the notice back with its answers', async () => {
  await sheet.page.evaluate(() => {
    window.held.waiting = [];
  });
  await sheet.enter('B6', '32');
  await sheet.page.clock.fastForward(16_000);
  expect(await sheet.standing.innerText()).toBe('');
  await passTime(sheet);
  await expect.poll(() => sheet.standing.innerText()).toMatch(/calculation has stopped/);
  await sheet.page.evaluate(() => {
    const waiting = window.held.waiting ?? [];
    window.held.waiting = undefined;
    for (const send of waiting) send();
  });
  await sheet.shows('B20', 3);
  await expect.poll(() => sheet.standing.innerText()).toBe('');
});
