import { FULL } from '../../full';
import { itBearsATiredHand } from './tiredHand';

itBearsATiredHand('freeze-check', FULL);
