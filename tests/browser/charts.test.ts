import { describe, expect, it } from 'vitest';
import { chartCalled, covers, middleOf } from './chartsOnSheet';
import { TALL } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { axeFaults } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

const TITLE = 'Share of the light at the subject';
const chart = () => chartCalled(sheet, TITLE);

describe('a chart on its sheet', () => {
  it('stands where Excel puts it, scrolls with the cells, and hides behind the rows that stay', async () => {
    await sheet.insert('Lights on set');
    await covers(sheet, 'I4', 'P14');
    expect(await axeFaults(sheet.page, '.charts')).toEqual([]);
    // The wheel scrolls the sheet over a chart as well.
    const { x, y } = await middleOf(chart());
    await sheet.page.mouse.move(x, y);
    await sheet.page.mouse.wheel(0, 120);
    await expect.poll(async () => (await middleOf(chart())).y).toBeLessThan(y - 60);
    const covered = await sheet.page.evaluate(() => {
      const { x: left, y: top } = window.sweeptable.place('I2');
      return document.elementFromPoint(left, top)?.closest('.charts figure') !== null;
    });
    expect(covered).toBe(false);
    // a cell is found where it has been scrolled to
    await sheet.click('A18');
  });
});
