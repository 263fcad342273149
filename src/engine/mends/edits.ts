/** What is mended of edits, where a workbook is edited: a thread that only calculates has no use for it. */
import type { Univer } from '@univerjs/core';
import './deletedLines';
import './ownSheet';
import { giveOwnFormulas } from './ownFormulas';
import { hearColumnsRemoved } from './tableColumns';
import { nameCopiedTables } from './tableCopy';
import './tableShift';
import { hearWhatIsCut } from './tableCut';
import { writeHeadings } from './tableInserted';
import { letTablesFollow } from './tableMove';

export { withOwnFormulas } from './ownFormulas';

/** In each workbook that is open, from now on. */
export function mendEdits(univer: Univer): void {
  giveOwnFormulas(univer);
  letTablesFollow(univer);
  nameCopiedTables(univer);
  hearWhatIsCut(univer);
  hearColumnsRemoved(univer);
  writeHeadings(univer);
}
