import { expect, test } from 'vitest';
import type { RowsSorted } from '../../../src/engine/sort/rowsSorted';
import { reorderOf } from '../../../src/engine/sort/rowsSorted';
import { areaText, parseArea } from '../../../src/formula/areaText';
import { reordered } from '../../../src/formula/followEdit';
import { areaOfGridRange, gridRange } from '../../../src/engine/gridRange';
import { areasAfterSort } from '../../../src/hosts/workbench/grid/effects';
import { ruledAfter } from '../../../src/hosts/workbench/tables/ruleFormulas';

const range = (text: string) => {
  const area = parseArea(text);
  if (!area) throw new Error(text);
  return gridRange(area);
};

/** Rows 5 to 8 of A to D: the third comes first, the first last. */
const SORTED: RowsSorted = { unitId: '', subUnitId: 'one', range: range('A5:D8'), from: [2, 1, 3, 0] };

test.each<[is: string, cells: string, formula: string, after: string, reads: string]>([
  ['of all rows stays', 'C5:C8', '=$C5>$J$1', 'C5:C8', '=$C5>$J$1'],
  ['of all rows and the heading stays', 'C4:C8', '=C4>1', 'C4:C8', '=C4>1'],
  ['of one row goes with it', 'B5:D5', '=$C5>$J$1', 'B8:D8', '=$C8>$J$1'],
  ['of rows that part is of each of them', 'C5:C6', '=C5>1', 'C6 C8', '=C6>1'],
  ['of rows that stay together is of both', 'A7:D8', '=A7="key"', 'A5:D5 A7:D7', '=A5="key"'],
  ['beside the rows stays', 'F5:F6', '=F5>1', 'F5:F6', '=F5>1'],
])('a rule %s', (_, cells, formula, after, reads) => {
  const areas = areasAfterSort(SORTED);
  const effect = {
    sheetId: 'one',
    sheetName: 'Plan',
    areas,
    byGrid: areas,
    after: reordered(reorderOf(SORTED)),
    removed: [],
  };
  const ruled = ruledAfter([range(cells)], true, effect);
  const texts = ruled?.ranges.map((each) => areaText(areaOfGridRange(each))).sort();
  expect(texts?.join(' ')).toBe(after);
  expect(ruled?.ranges[0] && areaText(areaOfGridRange(ruled.ranges[0]))).toBe(after.split(' ')[0]);
  expect(ruled?.reads(formula)).toBe(reads);
});
