import { describe, expect, test } from 'vitest';
import { parseArea, areaText } from '../../../src/formula/areaText';
import { type After, inserted, moved, removed } from '../../../src/formula/followEdit';
import { areaOfGridRange, gridRange } from '../../../src/engine/gridRange';
import type { Effect } from '../../../src/hosts/workbench/grid/effects';
import { ruledAfter } from '../../../src/hosts/workbench/tables/ruleFormulas';

const range = (text: string) => {
  const area = parseArea(text);
  if (!area) throw new Error(text);
  return gridRange(area);
};

const effect = (after: After): Effect => {
  const areas: Effect['areas'] = (each) => {
    const now = after(areaOfGridRange(each));
    return now ? [gridRange(now)] : [];
  };
  return { sheetId: 'one', sheetName: 'Plan', after, removed: [], areas, byGrid: areas };
};
const rows = (at: number, count = 1) => ({ axis: 'rows', at: at - 1, count }) as const;
const columns = (at: number, count = 1) => ({ axis: 'columns', at: at - 1, count }) as const;

/** A warning that the cells of a column have each for themselves, beside a limit that stands above them. */
const WARNED = ['C54:C57', '=$C54>$J$12'] as const;

describe('a rule, where', () => {
  test.each<[edit: string, after: After, cells: string, formula: string]>([
    ['a row comes in above all', inserted(rows(3)), 'C55:C58', '=$C55>$J$13'],
    ['a row comes in between limit and cells', inserted(rows(30)), 'C55:C58', '=$C55>$J$12'],
    ['a row comes in above its first cell', inserted(rows(54)), 'C55:C58', '=$C55>$J$12'],
    ['a row comes in between its cells', inserted(rows(56)), 'C54:C58', '=$C54>$J$12'],
    ['a row comes in below its cells', inserted(rows(58)), 'C54:C57', '=$C54>$J$12'],
    ['its first row goes', removed(rows(54)), 'C54:C56', '=$C54>$J$12'],
    ['its last row goes', removed(rows(57)), 'C54:C56', '=$C54>$J$12'],
    ['a row above goes', removed(rows(20)), 'C53:C56', '=$C53>$J$12'],
    ['its limit goes', removed(rows(12)), 'C53:C56', '=$C53>#REF!'],
    ['a column comes in before', inserted(columns(1, 2)), 'E54:E57', '=$E54>$L$12'],
    ['a column comes in between', inserted(columns(5)), 'C54:C57', '=$C54>$K$12'],
    ['its rows move up', moved(rows(54, 4), 19), 'C20:C23', '=$C20>$J$12'],
    ['its limit moves below', moved(rows(12), 59), 'C53:C56', '=$C53>$J$59'],
  ])('%s', (_, after, cells, formula) => {
    const now = ruledAfter([range(WARNED[0])], true, effect(after));
    expect(now?.ranges.map((each) => areaText(areaOfGridRange(each)))).toEqual([cells]);
    expect(now?.reads(WARNED[1])).toBe(formula);
  });

  test('all its cells go, is none', () => {
    expect(ruledAfter([range('C54:C57')], true, effect(removed(rows(50, 10))))).toBeUndefined();
  });

  test('its first area goes, is as the next reads it', () => {
    const now = ruledAfter([range('C54:C55'), range('C70:C71')], true, effect(removed(rows(54, 2))));
    expect(now?.ranges.map((each) => areaText(areaOfGridRange(each)))).toEqual(['C68:C69']);
    expect(now?.reads('=C54>D54')).toBe('=C68>D68');
  });

  test('another sheet is edited, follows it where it speaks of it', () => {
    const now = ruledAfter([range('C54:C57')], false, effect(inserted(rows(1))));
    expect(now?.ranges).toEqual([range('C54:C57')]);
    expect(now?.reads("=C54>plan!$B$2+'Other'!$B$2+[1]Plan!B2")).toBe(
      "=C54>plan!$B$3+'Other'!$B$2+[1]Plan!B2",
    );
  });
});
