import { describe, expect } from 'vitest';
import { onCellIn } from './cellInWorkbench';
import { checkExplain, checkExplainAccess } from './explainChecks';
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
});

// A page for each: after a page has been looked at in all colours, what is typed into the next workbook may be lost.
checkExplainAccess(async (cell, use) => {
  const sheet = await Workbench.open();
  await onCellIn(sheet, cell, use);
  expect(sheet.complaints).toEqual({ errors: [], outside: [] });
  await sheet.close();
});
