/** What is mended of edits, where a workbook is edited: a thread that only calculates has no use for it. */
import './lines';
import './ownSheet';
import './tableShift';

export { letTablesFollow } from './tableMove';
export { giveOwnFormulas, withOwnFormulas } from './ownFormulas';
