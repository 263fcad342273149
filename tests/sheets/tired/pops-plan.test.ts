import { FULL } from '../../full';
import { itBearsATiredHand } from './tiredHand';

itBearsATiredHand('pops-plan', FULL);
