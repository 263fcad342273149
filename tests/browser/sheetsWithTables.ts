/** Sheets with tables that rows are added to and sorted in. */
export const WITH_TABLES = [
  'Depth options',
  'Flash trace',
  'Freeze check',
  'Heads',
  'Lights on set',
  'Pops build',
  'Pops plan',
] as const;
