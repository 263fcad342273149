/** What Copy evenness says of all places together. */
export const EVENNESS_ANSWERS = [
  'verdict',
  'uneven',
  'doubt',
  'worked',
  'workedPops',
  'sideways',
  'upright',
  'ends',
  'tells',
];
