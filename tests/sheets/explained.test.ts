import { describe, expect, test } from 'vitest';
import { explain } from '../../src/explain/explain';
import { referencesIn } from '../../src/formula/tree';
import { parseReference } from '../../src/formula/reference';
import { planAlone } from '../../src/sheets/makePlan';
import { TEMPLATES } from '../../src/sheets/templates';

const FORMULAS = TEMPLATES.flatMap((template) =>
  planAlone(template, true).sheet.cells.flatMap(({ formula }) =>
    formula === undefined ? [] : [[template.id, formula] as const],
  ),
);

describe('the formulas of the templates can be explained', () => {
  test.each([...new Set(FORMULAS.map(([id]) => id))])('%s: every call, and every reference', (id) => {
    for (const [, formula] of FORMULAS.filter(([of]) => of === id)) {
      const calls = formula.replace(/"(?:[^"]|"")*"/g, '').match(/SWEEP\.\w+\(/g) ?? [];
      expect(explain(formula, () => undefined).steps, formula).toHaveLength(calls.length);
      for (const reference of referencesIn(formula))
        expect(parseReference(reference), `${formula}: ${reference}`).toBeDefined();
    }
  });
  test('of which there are many', () => expect(FORMULAS.length).toBeGreaterThan(100));
});
