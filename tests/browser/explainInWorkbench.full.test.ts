import { onCellIn } from './cellInWorkbench';
import { checkExplainAccess } from './explainChecks';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

checkExplainAccess((cell, use) => onCellIn(sheet, cell, use));
