import { expect, it } from 'vitest';
import { oneOf } from '../full';
import { eachItsWorkbook } from './onePage';
import { WITH_TABLES } from './sheetsWithTables';
import { sortDialog } from './sortDialog';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

/** What all cells of the sheet in view show. */
const shown = () =>
  sheet.page.evaluate(() => {
    const extent = window.sweeptable.extent();
    const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.split('');
    const columns = ['', ...letters]
      .flatMap((before) => letters.map((letter) => before + letter))
      .slice(0, extent.columns);
    return Array.from({ length: extent.rows }, (_, row) =>
      columns.map((column) => window.sweeptable.cell(`${column}${row + 1}`).text),
    );
  });

/** Notes in the page when the next answers have come: it is called before what has them calculated. */
const listen = () =>
  sheet.page.evaluate(() => {
    const { dataset } = document.documentElement;
    delete dataset['answered'];
    void window.sweeptable.calculated().then(() => (dataset['answered'] = 'true'));
  });
const answered = () =>
  sheet.page.waitForFunction(() => document.documentElement.dataset['answered'] === 'true');

/** The same once nothing changes any more: what is typed has its answers a tenth of a second later. */
async function settled() {
  let before = await shown();
  for (;;) {
    await sheet.page.waitForTimeout(300);
    const now = await shown();
    if (JSON.stringify(now) === JSON.stringify(before)) return now;
    before = now;
  }
}

const spanOf = (area: string): readonly [top: number, bottom: number] => {
  const [, top = 0, bottom = 0] = /^[A-Z]+(\d+):[A-Z]+(\d+)$/.exec(area)?.map(Number) ?? [];
  return [top, bottom];
};

/** Half of the sheets, and the others in another run. */
const SOME = WITH_TABLES.filter((_, i) => i % 2 === oneOf(2));

it.each(SOME)(
  'sorting a table of %s changes no answer in silence, and one undo takes it back',
  async (template) => {
    const others = Object.keys(await sheet.tables());
    await listen();
    await sheet.insert(template);
    await answered();
    const tables = Object.entries(await sheet.tables()).filter(([name]) => !others.includes(name));
    const spans = tables.map(([, area]) => spanOf(area));
    // Other tables may list the heads of this one in their order.
    const outside = (cells: readonly (readonly string[])[]) =>
      cells.filter((_, row) => !spans.some(([top, bottom]) => top <= row + 1 && row + 1 <= bottom));
    const before = await settled();
    for (const [name, area] of tables) {
      // what is said of the table before must not be taken for an answer
      const close = sheet.page.locator('#notice').getByRole('button', { name: 'Close this message' });
      if (await close.isVisible()) await close.click();
      await expect.poll(() => sheet.notice.innerText()).toBe('');
      await sheet.goTo(`${/^[A-Z]+/.exec(area)?.[0]}${spanOf(area)[0] + 1}`);
      await sheet.page.keyboard.press('Control+Alt+s');
      await sheet.dialog.getByLabel('Order').selectOption('Largest first, Z to A');
      await listen();
      await sheet.dialog.getByRole('button', { name: 'Sort' }).click();
      await expect
        .poll(() => sheet.notice.innerText())
        .toMatch(/is sorted by|in that order already|Nothing was changed/);
      const isSorted = (await sheet.notice.innerText()).includes('is sorted by');
      if (isSorted) await answered();
      const after = await settled();
      // What means the order, such as the place of the key among the rows, is told.
      if (JSON.stringify(outside(after)) !== JSON.stringify(outside(before)))
        expect(await sheet.notice.innerText(), name).toContain('Answers that go by the order');
      if (isSorted) {
        expect(after).not.toEqual(before);
        await sheet.page.keyboard.press('Control+z');
      }
      await expect.poll(shown).toEqual(before);
    }
  },
);

it('refuses in words where an answer would change, by the key in a chosen cell', async () => {
  await sheet.enterDown('H4', ['3', '1', '2']);
  await sheet.enterDown('I4', ['=H4', '=I4+H5', '=I5+H6']);
  await sheet.shows('I6', 6);
  await sheet.click('H4');
  await sheet.page.keyboard.press('Shift+ArrowRight');
  await sheet.page.keyboard.press('Shift+ArrowDown');
  await sheet.page.keyboard.press('Shift+ArrowDown');
  await sheet.page.keyboard.press('Control+Alt+s');
  await sortDialog(sheet, 'H', 'Smallest first, A to Z');
  await expect.poll(() => sheet.notice.innerText()).toContain('I5 reads another of these rows: I4');
  expect(await sheet.values('H4', 'H5', 'H6', 'I6')).toEqual([3, 1, 2, 6]);
});

it('tells which answers went by the order of the rows', async () => {
  await sheet.enterDown('H4', ['3', '1', '2']);
  await sheet.enterDown('J4', ['=INDEX(H4:H6,1)', '=SUM(H4:H6)']);
  await sheet.shows('J5', 6);
  await sheet.click('H4');
  await sheet.page.keyboard.press('Shift+ArrowDown');
  await sheet.page.keyboard.press('Shift+ArrowDown');
  await sheet.page.keyboard.press('Control+Alt+s');
  await sortDialog(sheet, 'H', 'Smallest first, A to Z');
  await sheet.shows('J4', 1);
  await expect.poll(() => sheet.notice.innerText()).toContain('are others now: J4. Ctrl+Z');
  await sheet.page.keyboard.press('Control+z');
  await sheet.shows('J4', 3);
});
