import { expect } from 'vitest';
import { onCellIn } from './cellInWorkbench';
import { checkExplainAccess } from './explainChecks';
import { Workbench } from './workbench';

// A page for each: after a page has been looked at in all colours, what is typed into the next workbook may be lost.
checkExplainAccess(async (cell, use) => {
  const sheet = await Workbench.open();
  await onCellIn(sheet, cell, use);
  expect(sheet.complaints).toEqual({ errors: [], outside: [] });
  await sheet.close();
});
