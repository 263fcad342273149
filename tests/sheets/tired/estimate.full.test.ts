import { itBearsATiredHand } from './tiredHand';

// It has more inputs and formulas than any other sheet: all slips into all of them would take minutes, even in full.
itBearsATiredHand('estimate', false);
