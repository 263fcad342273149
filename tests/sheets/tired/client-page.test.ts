import { FULL } from '../../full';
import { itBearsATiredHand } from './tiredHand';

itBearsATiredHand('client-page', FULL);
