import { CFRuleType } from '@univerjs/preset-sheets-conditional-formatting';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { conditionFormula } from '../../../src/hosts/workbench/book/conditionFormula';
import { answers } from '../../engine/book';

/** A1 to A5, and each rule of the grid with what it says of them, worked by hand. */
const CELLS = [2, 9, 4, 'Oak 9', null] as const;
const AREA = { row: 0, column: 0, rows: CELLS.length, columns: 1 };
const [Y, n] = [true, false];
const RULES = [
  ['more than 4', { subType: 'number', operator: 'greaterThan', value: 4 }, [n, Y, n, n, n]],
  ['at most 4', { subType: 'number', operator: 'lessThanOrEqual', value: 4 }, [Y, n, Y, n, n]],
  ['all but 4', { subType: 'number', operator: 'notEqual', value: 4 }, [Y, Y, n, Y, Y]],
  ['2 to 4', { subType: 'number', operator: 'between', value: [2, 4] }, [Y, n, Y, n, n]],
  ['not 2 to 4', { subType: 'number', operator: 'notBetween', value: [2, 4] }, [n, Y, n, Y, Y]],
  ['a 9 in it', { subType: 'text', operator: 'containsText', value: '9' }, [n, Y, n, Y, n]],
  ['no 9 in it', { subType: 'text', operator: 'notContainsText', value: '9' }, [Y, n, Y, n, Y]],
  ['begins with Oak', { subType: 'text', operator: 'beginsWith', value: 'Oak' }, [n, n, n, Y, n]],
  ['ends with oak', { subType: 'text', operator: 'endsWith', value: 'oak' }, [n, n, n, n, n]],
  ['empty', { subType: 'text', operator: 'containsBlanks' }, [n, n, n, n, Y]],
  ['no answer', { subType: 'text', operator: 'containsErrors' }, [n, n, n, n, n]],
  ['above the average, 5', { subType: 'average', operator: 'greaterThan' }, [n, Y, n, n, n]],
  ['the highest 2', { subType: 'rank', isBottom: false, isPercent: false, value: 2 }, [n, Y, Y, n, n]],
  ['the lowest', { subType: 'rank', isBottom: true, isPercent: false, value: 1 }, [Y, n, n, n, n]],
  ['the highest 70%', { subType: 'rank', isBottom: false, isPercent: true, value: 70 }, [n, Y, Y, n, n]],
  ['the lowest 10%', { subType: 'rank', isBottom: true, isPercent: true, value: 10 }, [Y, n, n, n, n]],
  ['once', { subType: 'uniqueValues' }, [Y, Y, Y, Y, n]],
  ['twice', { subType: 'duplicateValues' }, [n, n, n, n, n]],
] as const;

const formulaOf = (rule: object, areas = [AREA]): string | undefined =>
  conditionFormula({ type: CFRuleType.highlightCell, style: {}, ...rule } as never, areas);

let book: Awaited<ReturnType<typeof answers>>;
beforeAll(async () => {
  const formulas = RULES.flatMap(([, rule]) =>
    CELLS.map((_cell, i) => (formulaOf(rule) ?? '').replaceAll(/(?<!\$)\bA1\b/g, `A${i + 1}`)),
  );
  book = await answers(
    formulas,
    CELLS.map((cell) => [cell]),
  );
});
afterAll(() => book.book.dispose());

test.each(RULES.map(([name, , says], i) => [name, says, i] as const))('%s', (_name, says, i) => {
  expect(CELLS.map((_cell, k) => (book.answer(i * CELLS.length + k) as unknown[][]).flat()[0])).toEqual([
    ...says,
  ]);
});

test.each([
  ['days that move on', { subType: 'timePeriod', operator: 'today' }, [AREA]],
  ['areas apart that are compared', { subType: 'uniqueValues' }, [AREA, { ...AREA, column: 3 }]],
])('there is no formula for %s', (_name, rule, areas) => expect(formulaOf(rule, areas)).toBeUndefined());
