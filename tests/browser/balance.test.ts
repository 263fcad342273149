import { beforeAll, describe, expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
});
beforeAll(() => sheet.pane.getByRole('tab', { name: 'Balance' }).click());

const said = () => sheet.pane.locator('.pane > .status').innerText();
const panel = () => sheet.pane.getByRole('tabpanel', { name: 'Balance' });
const cellsOf = async (table: string): Promise<string[][]> =>
  panel()
    .getByRole('table', { name: table, exact: true })
    .locator('tbody tr')
    .evaluateAll((rows) =>
      rows.map((row) => [...row.children].map((cell) => (cell as HTMLElement).innerText)),
    );
/** With the keyboard alone: the button is come to, and pressed. */
async function press(name: string): Promise<void> {
  await panel().getByRole('button', { name, exact: true }).focus();
  await sheet.page.keyboard.press('Enter');
}

describe('several points at once', () => {
  it('are balanced from a table that is laid, written in one step, measured and balanced again', async () => {
    await press('Lay a table');
    await expect.poll(said).toContain('It has a demo job');
    // the demo job is laid below its headings in row 5: facts of the heads, then the points from row 18 on
    expect(await sheet.texts('A16', 'A18', 'H7', 'K5')).toEqual(['Set to', 'Vessel', '1/2', 'Measured']);

    await press('Read the selected table');
    await expect.poll(said).toContain('A5:K21 on “Balance” is read: 3 heads, 4 points.');
    const heads = await cellsOf('Heads');
    expect(heads.map(([name]) => name)).toEqual(['Alder 600', 'Birch 1200', 'Hazel 400']);
    expect(await cellsOf('Points')).toHaveLength(4);
    expect(await panel().innerText()).toContain('“Birch 1200” is at its most');

    await press('Write the new powers to the sheet');
    await expect.poll(said).toContain('H16 to J17 on “Balance” is written. Ctrl+Z takes it back.');
    expect(await sheet.texts('H16', 'I16', 'J16')).toEqual(heads.map(([, , set]) => set));
    await sheet.undo('A20');
    await expect.poll(() => sheet.texts('H16', 'I16', 'H17')).toEqual(['', '', '']);

    // what the meter then shows at each point is where the next round starts
    await sheet.enterDown('K18', ['f/22', '16 9', 'f/22', 'f/11']);
    await press('Read the selected table');
    await expect.poll(() => panel().innerText()).toContain('This starts from what was measured');
  });
});
