import { describe, expect, it } from 'vitest';
import { enterShown, onCellIn } from './cellInWorkbench';
import { checkExplain, checkExplainAccess } from './explainChecks';
import { explained } from './explainedCell';
import { allInOneWorkbook } from './onePage';
import { Workbench } from './workbench';

describe('beside the grid', () => {
  let sheet: Workbench;
  allInOneWorkbook(
    (fresh) => {
      sheet = fresh;
    },
    { height: 1500 },
  );
  checkExplain((cell, use) => onCellIn(sheet, cell, use));

  it('says why it refuses, and why the one before it did', async () => {
    await enterShown(sheet, 'H5', 'abc', 'abc');
    await enterShown(sheet, 'H6', '=SWEEP.FNUMBER(H5)', '#VALUE!');
    await enterShown(sheet, 'H7', '=SWEEP.STOPDIFF(8,H6)', '#VALUE!');
    await sheet.refuses('H6', '#VALUE!', /cannot be read/);
    await sheet.click('H6');
    expect(await explained(sheet, 'H6 shows #VALUE!')).toContain(
      '"abc" cannot be read as an f-number. Write 11',
    );
    await sheet.click('H7');
    expect(await explained(sheet, 'H7 shows #VALUE!')).toContain(
      '"abc" cannot be read as an f-number. Write 11',
    );
  });
});

// A page for each: after a page has been looked at in all colours, what is typed into the next workbook may be lost.
checkExplainAccess(async (cell, use) => {
  const sheet = await Workbench.open();
  await onCellIn(sheet, cell, use);
  expect(sheet.complaints).toEqual({ errors: [], outside: [] });
  await sheet.close();
});
