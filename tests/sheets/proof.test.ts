import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { type PublishedCheck, proofTemplate } from '../../src/build/proof';
import { planAlone } from '../../src/sheets/makePlan';
import type { TemplateTable, Template } from '../../src/sheets/template';
import { calculated, templateOf } from './support';

const FOLDER = resolve(import.meta.dirname, '../../src/published');
const published = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.json'))
  .flatMap(
    (file) =>
      (JSON.parse(readFileSync(resolve(FOLDER, file), 'utf8')) as { checks: PublishedCheck[] }).checks,
  );

const proof = templateOf('proof');
const tableOf = (template: Template, id: string): TemplateTable =>
  template.blocks.find(
    (block): block is TemplateTable => block.kind === 'table' && block.id === id,
  ) as TemplateTable;

/** Columns of the checks, and what is calculated at the top. */
async function totals(template: Template) {
  const { column, cell } = await calculated(template);
  return {
    column: (name: string) => column('Checks', name),
    all: cell('all'),
    agree: cell('agree'),
    differ: cell('differ'),
  };
}

test('shows every published check, with its source, the value printed and what may differ', () => {
  const rows = tableOf(proof, 'Checks').rows;
  expect(rows).toHaveLength(published.length);
  expect(rows.map(([id, , gives, , , source]) => [id, gives, source])).toEqual(
    published.map((check) => [check.function, check.gives, check.source]),
  );
  const keys = tableOf(proof, 'Sources').rows.map(([key]) => key);
  expect(new Set(keys)).toEqual(new Set(published.map(({ source }) => source)));
});

test('every live value agrees', { timeout: 60_000 }, async () => {
  const { column, all, agree, differ } = await totals(proof);
  const rows = tableOf(proof, 'Checks').rows;
  const wrong = column('Verdict').flatMap((verdict, i) =>
    verdict === 'agrees' ? [] : [[rows[i]?.[3], rows[i]?.[2], column('Live')[i]]],
  );
  expect(wrong).toEqual([]);
  expect([all, agree, differ]).toEqual([published.length, published.length, 0]);
});

test(
  'a value that differs is said in its row and counted, a text as well as a number',
  { timeout: 60_000 },
  async () => {
    const text = published.findIndex(({ gives }) => typeof gives === 'string');
    const number = published.findIndex(({ gives }) => typeof gives === 'number' && gives > 1);
    const spoilt = published.map((check, i) =>
      i === text
        ? { ...check, gives: 'f/7.1' }
        : i === number
          ? { ...check, gives: Number(check.gives) * 1.1 }
          : check,
    );
    const { column, differ } = await totals(proofTemplate(spoilt));
    expect(column('Verdict').flatMap((verdict, i) => (verdict === 'agrees' ? [] : [i]))).toEqual(
      [text, number].sort((a, b) => a - b),
    );
    expect(differ).toBe(2);
  },
);

test('marks a row that differs', () => {
  const { conditions, tables } = planAlone(proof, true).sheet;
  const verdict = tableOf(proof, 'Checks').columns.findIndex(({ id }) => id === 'Verdict');
  expect(
    conditions.some(
      ({ areas: [area] }) => area?.column === verdict && area.rows === (tables[0]?.area.rows ?? 0) - 1,
    ),
  ).toBe(true);
});

test('a check that names no function stops the build', () => {
  expect(() => proofTemplate([{ ...(published[0] as PublishedCheck), function: 'NOSUCH' }])).toThrow(
    /NOSUCH/,
  );
});

test('the builds read the same checks', () => {
  const { CHECKS } = createRequire(import.meta.url)('../../src/build/templates.cjs') as { CHECKS: string };
  expect(CHECKS).toBe(FOLDER);
});
