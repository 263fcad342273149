import { expect, it } from 'vitest';
import { breakable, checkLayFailures } from './layChecks';
import { Workbench } from './workbench';

it('a sheet that cannot be laid leaves the workbook as it was, whatever step fails, and it says why', async () => {
  const sheet = await Workbench.open({ before: breakable });
  await checkLayFailures(sheet, [
    ['sheet.mutation.insert-sheet', 'throws'],
    ['sheet.mutation.add-table', 'refuses'],
    ['data-validation.mutation.addRule', 'throws'],
    ['sheet.mutation.add-conditional-rule', 'refuses'],
    ['sheet.mutation.update-note', 'throws'],
    ['sheet.mutation.set-range-values', 'refuses'],
  ]);
  expect(sheet.complaints).toEqual({ errors: [], outside: [] });
  await sheet.close();
});
