/** What stands beside the figures of a number format: its quoted words and plain letters, in the part for numbers above 0. */
const unitOf = (format: string): string => {
  const [above = ''] = format.replaceAll(/\[[^\]]*\]/g, '').split(';');
  return above
    .replaceAll(/_.|\*./g, '')
    .replaceAll(/General/gi, '')
    .replaceAll(/[#0?.,+\-()"\\\s]/g, '')
    .toLowerCase();
};

/** Marks of a scale: two of f/8 are not f/16. */
const OF_A_SCALE = ['f/', '1/'];

/** Whether numbers of these formats may be added up: all of one unit, and none a mark of a scale. */
export function summableUnits(formats: readonly string[]): boolean {
  const units = new Set(formats.map(unitOf));
  return units.size <= 1 && [...units].every((unit) => !OF_A_SCALE.some((mark) => unit.startsWith(mark)));
}
