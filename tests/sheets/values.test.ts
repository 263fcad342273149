import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { numfmt } from '@univerjs/core';
import { format, resolveConfig } from 'prettier';
import { afterAll, describe, expect, test } from 'vitest';
import { isCellError } from '../../src/formula/errors';
import { type Lines, linesInList } from '../../src/sheets/inList';
import { layout } from '../../src/sheets/layout';
import { TEMPLATES } from '../../src/sheets/templates';
import { FULL } from '../full';
import { calculated } from './support';

/** What the pane's list shows of each sheet. `UPDATE_IN_LIST=1` writes it anew: look at its diff. */
const FILE = resolve(import.meta.dirname, '../../src/sheets/answersInList.json');
const ANEW = process.env['UPDATE_IN_LIST'] === '1';
const written = JSON.parse(readFileSync(FILE, 'utf8')) as Readonly<Record<string, Lines>>;
const found: Record<string, Lines> = {};
afterAll(async () => {
  if (ANEW)
    writeFileSync(
      FILE,
      await format(JSON.stringify(found), { ...(await resolveConfig(FILE)), parser: 'json' }),
    );
});

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

  test('the list shows what the sheet shows of its demo job', async () => {
    const { plan, values } = await calculated(template);
    const formats = new Map(plan.cells.map(({ row, column, style }) => [`${row},${column}`, style?.format]));
    const shown = (row: number, column: number): string => {
      const value = values(row, column);
      return typeof value === 'number'
        ? numfmt.format(formats.get(`${row},${column}`) ?? 'General', value)
        : String(value ?? '');
    };
    const lines = linesInList(template, layout(template), shown) ?? [];
    found[template.id] = lines;
    if (!ANEW) expect(lines).toEqual(written[template.id]);
    // at least one word and its answer in each
    for (const line of lines) expect(line.filter((text) => text !== '').length).toBeGreaterThan(1);
    expect(lines.length).toBeGreaterThan(1);
  });
});

test('the list shows no other sheets', () =>
  expect(Object.keys(ANEW ? found : written).sort()).toEqual(TEMPLATES.map(({ id }) => id).sort()));
