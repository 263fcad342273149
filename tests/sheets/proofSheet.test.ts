import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { type PublishedCheck, proofTemplate } from '../../src/build/proofSheet';
import { SOURCES } from '../../src/catalogue/sources';
import { planAlone } from '../../src/sheets/makePlan';
import type { TemplateTable, Template } from '../../src/sheets/template';
import { calculated, templateOf } from './support';

const FOLDER = resolve(import.meta.dirname, '../../src/published');
const published = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.json'))
  .flatMap(
    (file) =>
      (
        JSON.parse(readFileSync(resolve(FOLDER, file), 'utf8')) as {
          checks: (PublishedCheck & { id: string; kind: string })[];
        }
      ).checks,
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
    kinds: ['printed', 'apart', 'memory'].map((id) => cell(id)),
    differ: cell('differ'),
  };
}

test('shows every published check, with the title of its source, the value printed and what may differ', () => {
  const rows = tableOf(proof, 'Checks').rows;
  expect(rows).toHaveLength(published.length);
  expect(rows.map(([check, gives, , , source]) => [String(check).split(':')[0], gives, source])).toEqual(
    published.map((check) => [check.function, check.gives, SOURCES[check.source].title]),
  );
  const titles = tableOf(proof, 'Sources').rows.map(([, title]) => title);
  expect(new Set(titles)).toEqual(new Set(published.map(({ source }) => SOURCES[source].title)));
  expect(new Set(titles).size).toBe(titles.length);
});

test('keys that share a title are of one kind', () => {
  const kinds = Object.values(SOURCES).map(({ title, kind }) => `${title}: ${kind}`);
  expect(new Set(kinds).size).toBe(new Set(Object.values(SOURCES).map(({ title }) => title)).size);
});

test(
  'every live value agrees, and leads with how many there are of each kind',
  { timeout: 60_000 },
  async () => {
    const { column, kinds, differ } = await totals(proof);
    const rows = tableOf(proof, 'Checks').rows;
    const wrong = column('Verdict').flatMap((verdict, i) =>
      verdict === 'agrees' ? [] : [[rows[i]?.[2], rows[i]?.[1], column('Live')[i]]],
    );
    expect(wrong).toEqual([]);
    expect(differ).toBe(0);
    // Each check says itself how sure it is.
    const of = (kind: string) => published.filter((check) => check.kind === kind).length;
    expect(kinds).toEqual([of('published'), of('analytic'), of('memory')]);
    const [form] = proof.blocks;
    expect(form?.kind === 'form' ? form.fields.map(({ id }) => id) : []).toEqual([
      'printed',
      'apart',
      'memory',
      'differ',
    ]);
  },
);

test(
  'where print and value differ by more than the last digit printed, the reason stands beside it',
  { timeout: 60_000 },
  async () => {
    const { column } = await totals(proof);
    /** 1 in the place of the last digit that is no trailing nought of a whole number: 0.01 for 3.55, 100 for 10600. */
    const lastDigit = (printed: number): number => {
      const text = printed
        .toPrecision(15)
        .replace(/e.*/, '')
        .replace(/(\.\d*?)0+$/, '$1');
      const decimals = (text.split('.')[1] ?? '').length;
      if (decimals > 0 || printed === 0) return 10 ** -decimals;
      let place = 1;
      while (printed % (place * 10) === 0) place *= 10;
      return place;
    };
    const far = published.filter(({ gives, kind }, i) => {
      if (typeof gives !== 'number' || kind === 'analytic') return false;
      const differs = Math.abs(Number(column('Live')[i]) - gives);
      return differs > lastDigit(gives) && differs > 1e-9 * Math.abs(gives);
    });
    expect(far.length).toBeGreaterThan(10);
    const rows = tableOf(proof, 'Checks').rows;
    for (const check of far) {
      expect(check.note, check.id).toMatch(/\w{3}/);
      expect(rows[published.indexOf(check)]?.[5], check.id).toContain(check.note);
    }
  },
);

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

test('a row that is left blank does not agree', { timeout: 60_000 }, async () => {
  const few = proofTemplate(published.slice(0, 3));
  const blank = {
    ...few,
    blocks: few.blocks.map((block) =>
      block === tableOf(few, 'Checks')
        ? { ...block, rows: block.rows.map((row, i) => (i === 1 ? row.map(() => null) : row)) }
        : block,
    ),
  };
  const { column, differ } = await totals(blank);
  expect([column('Verdict'), differ]).toEqual([['agrees', 'DIFFERS', 'agrees'], 1]);
});

test('marks a row that differs', () => {
  const { conditions, tables } = planAlone(proof, true).sheet;
  const verdict = tableOf(proof, 'Checks').columns.findIndex(({ id }) => id === 'Verdict');
  const checks = tables.find(({ name }) => name === 'Checks');
  expect(
    conditions.some(
      ({ areas: [area] }) => area?.column === verdict && area.rows === (checks?.area.rows ?? 0) - 1,
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
