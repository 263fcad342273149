import { beforeEach, describe, expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;

describe('a paste from another program', () => {
  allInOneWorkbook(
    (fresh) => {
      sheet = fresh;
    },
    { height: 1500 },
  );
  beforeEach(async () => {
    if (!(await sheet.sheets()).includes('Lights on set')) await sheet.insert('Lights on set');
  });

  it('reads a length in another unit where a length stands', async () => {
    await sheet.paste('M34', '80 cm');
    await sheet.shows('M34', 0.8);
  });

  it('lacks nothing where what was pasted can be read', async () => {
    // what the sheet says of the row whose reading is no number is in its column Lacks
    await sheet.paste('D33', '?');
    await sheet.shows('P33', 'reading');
    await sheet.paste('D33', 'f/16');
    await sheet.shows('P33', '');
    expect(await sheet.texts('D33')).toEqual(['f/16']);
  });

  it('says what it goes over where no table grows', async () => {
    await sheet.sheet('Pops build');
    await sheet.enterDown('H5', ['16', '11', '=SUM(H5:H6)']);
    await sheet.shows('H7', 27);
    await sheet.paste('H5', '1\n2\n3');
    await sheet.shows('H7', 3);
    expect(await sheet.notice.innerText()).toBe(
      '2 cells from H6 to H7 held something: they were pasted over, with a formula among them. Ctrl+Z brings them back.',
    );
    await sheet.page.keyboard.press('Control+z');
    await sheet.shows('H7', 27);
    // the first cell too, where a formula goes
    for (const words of ['4', '4\t5']) {
      await sheet.paste('H7', words);
      await sheet.shows('H7', 4);
      await expect
        .poll(() => sheet.notice.innerText())
        .toBe('H7 held a formula: it was pasted over. Ctrl+Z brings it back.');
      await sheet.page.keyboard.press('Control+z');
      await sheet.shows('H7', 27);
    }
  });

  it('takes an f-number as it is written where a number is asked for', async () => {
    await sheet.insert('Freeze check');
    await sheet.paste('B12', 'f/5.6');
    await sheet.shows('B12', 5.6);
    expect(await sheet.texts('B12')).toEqual(['f/5.6']);
  });
});
