import { describe } from 'vitest';
import { onCellInExcel } from './cellInExcel';
import { checkExplainAccess } from './explainChecks';

describe('in the built pane of Excel', () => checkExplainAccess(onCellInExcel));
