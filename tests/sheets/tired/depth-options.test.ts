import { FULL } from '../../full';
import { itBearsATiredHand } from './tiredHand';

itBearsATiredHand('depth-options', FULL, { 'metered by the distance': { draw: null, distance: 600 } });
