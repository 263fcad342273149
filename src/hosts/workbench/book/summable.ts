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
/** Of what two are not twice as much: ratios, speeds of film, temperatures of colour, turns. */
const NO_SUM: ReadonlySet<string> = new Set([':1', 'iso', 'k', 'rpm', 'm/s']);
/** Dates and times of day: letters that are no words. */
const isDate = (format: string): boolean =>
  /[ymdhs]/i.test(format.replaceAll(/"[^"]*"|\[[^\]]*\]|\\.|General/gi, ''));

/** Whether numbers of these formats may be added up: all of one unit, and none a mark of a scale, a ratio or a date. */
export function summableUnits(formats: readonly string[]): boolean {
  const units = new Set(formats.map(unitOf));
  const isScale = (unit: string): boolean => OF_A_SCALE.some((mark) => unit.startsWith(mark));
  return (
    units.size <= 1 && !formats.some(isDate) && ![...units].some((unit) => NO_SUM.has(unit) || isScale(unit))
  );
}
