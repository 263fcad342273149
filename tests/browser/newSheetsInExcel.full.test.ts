import { describe } from 'vitest';
import { checkOfferToTakeBack } from './newSheetsChecks';
import { onExcel } from './newSheetsHost';

describe('in the built pane of Excel', () => checkOfferToTakeBack(onExcel));
