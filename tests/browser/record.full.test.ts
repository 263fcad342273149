import { eachItsWorkbook } from './onePage';
import { checkRecords } from './recordChecks';
import { asSheetsHost } from './sheetsInWorkbench';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

checkRecords((use) => use(asSheetsHost(sheet)));
