import { itBearsATiredHand } from './tiredHand';

// Each slip has a large sheet calculated anew: all of them would take minutes, even in full.
itBearsATiredHand('copy-evenness', false);
