import { describe, expect, test } from 'vitest';
import { isCellError } from '../../src/formula/errors';
import { TEMPLATES } from '../../src/sheets/templates';
import { FULL } from '../full';
import { calculated } from './support';

describe.each(TEMPLATES.map((t) => [t.name, t] as const))('%s', (_, template) => {
  test.each(FULL ? [true, false] : [true])('holds no error (filled: %s)', async (filled) => {
    const { plan, values } = await calculated(template, filled);
    const formulas = plan.cells.filter(({ formula }) => formula !== undefined);
    const bad = formulas.filter(({ row, column }) => {
      const value = values(row, column);
      return value === null || isCellError(value);
    });
    expect(formulas.length).toBeGreaterThan(5);
    expect(bad).toEqual([]);
  });
});
