import { it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { checkSaving } from './recordChecks';
import { asSheetsHost } from './sheetsInWorkbench';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('a record is saved, read back as it was, and not laid from a damaged file', () =>
  checkSaving(asSheetsHost(sheet)));
