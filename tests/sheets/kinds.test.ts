import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planAlone } from '../../src/sheets/makePlan';
import type { Template } from '../../src/sheets/template';
import { contrast, luminance } from './contrast';

const { readTemplate } = createRequire(import.meta.url)('../../src/build/templates.cjs') as {
  readTemplate: (file: string, text: string) => Template;
};
const read = (id: string): Template =>
  readTemplate(`${id}.json`, readFileSync(resolve(import.meta.dirname, `kinds/${id}.json`), 'utf8'));

const kinds = read('kinds');
const { sheet } = planAlone(kinds, true);

describe('a map of colours', () => {
  const map = sheet.conditions.filter((condition) => condition.kind === 'scale');

  test('is one scale over all of its columns, from the least of them to the most', () =>
    expect(map.map(({ areas }) => areas)).toEqual([[{ row: 5, column: 1, rows: 3, columns: 3 }]]));
  test('reads in grey too: it darkens from the least to the most, and its numbers stay readable', () => {
    for (const { low, high } of map) {
      expect(luminance(low) - luminance(high)).toBeGreaterThan(0.3);
      // WCAG 2.1, 1.4.6
      for (const fill of [low, high]) expect(contrast('#22303c', fill)).toBeGreaterThanOrEqual(7);
    }
  });
});
