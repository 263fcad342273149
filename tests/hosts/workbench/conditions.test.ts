import { describe, expect, test } from 'vitest';
import type { BookCondition } from '../../../src/book/book';
import { bookCondition, gridCondition } from '../../../src/hosts/workbench/book/conditions';
import { NotWritten } from '../../../src/hosts/workbench/book/notWritten';

const areas = [{ row: 1, column: 1, rows: 3, columns: 2 }];
const SCALE: BookCondition = { kind: 'scale', areas, low: '#fbf8f1', high: '#88cfc7' };
const MARK: BookCondition = {
  kind: 'formula',
  areas,
  formula: '=$B2>3',
  look: { ink: '#7d2410', bold: true },
};

describe('what marks cells, in the grid and back', () => {
  test.each([
    ['a scale of colours', SCALE],
    ['a formula', MARK],
  ])('%s', (_name, condition) => {
    const notWritten = new NotWritten();
    expect(bookCondition(gridCondition(condition), 'Sheet', notWritten)).toMatchObject([condition]);
    expect(notWritten.sentences).toEqual([]);
  });

  test('the grid gets the least and the most as the ends of a scale', () =>
    expect(gridCondition(SCALE).rule).toEqual({
      type: 'colorScale',
      config: [
        { index: 0, color: '#fbf8f1', value: { type: 'min' } },
        { index: 1, color: '#88cfc7', value: { type: 'max' } },
      ],
    }));

  test('a scale that a person made of three colours, or from a number, is told', () => {
    const { rule, ...rest } = gridCondition(SCALE);
    const [low, high] = (rule as { config: object[] }).config;
    const three = { ...rest, rule: { ...rule, config: [low, high, high] } };
    const number = {
      ...rest,
      rule: { ...rule, config: [{ ...low, value: { type: 'num', value: 3 } }, high] },
    };
    for (const made of [three, number]) {
      const notWritten = new NotWritten();
      expect(bookCondition(made as never, 'Sheet', notWritten)).toEqual([]);
      expect(notWritten.sentences).toEqual([
        'Colour scales of three colours, or with ends other than the least and the most (Sheet)',
      ]);
    }
  });
});
