import type { AskedChart, FormatOf } from './kind';

/** Why something cannot be drawn along the axis that has the numbers of a column. */
export function axisFaults(
  what: string,
  quantity: string,
  { table }: AskedChart,
  along: string | undefined,
  formatOf: FormatOf,
): string[] {
  const ofAxis = table.columns.find(({ id }) => id === along)?.quantity;
  const [unit, wanted] = [quantity, ofAxis].map((of) => formatOf(of ?? '')?.unit ?? '');
  return unit === wanted ? [] : [`${what} is in ${unit || 'no unit'}, but its axis in ${wanted || 'none'}`];
}
