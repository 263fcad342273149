import type { BookChart } from '../../../book/chart';
import { areaText } from '../../../formula/areas';

/** What a chart over plain cells cannot do; nothing where all that it draws are columns of tables. */
export function plainCellsNote({ x, series }: BookChart): string | undefined {
  const drawn = [x, ...series.flatMap((each) => (each.x ? [each.x, each.values] : [each.values]))];
  const plain = new Set(drawn.flatMap((from) => ('cells' in from ? [areaText(from.cells)] : [])));
  if (plain.size === 0) return undefined;
  return `Reads ${[...plain].join(', ')}, even after rows or columns were inserted or deleted before them.`;
}
