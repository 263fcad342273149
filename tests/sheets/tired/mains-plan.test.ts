import { FULL } from '../../full';
import { itBearsATiredHand } from './tiredHand';

itBearsATiredHand('mains-plan', FULL);
