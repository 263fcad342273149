import { describe, expect, test } from 'vitest';
import type { Field, TemplateTable, TemplateValue } from '../../src/sheets/template';
import { calculated, templateOf } from './support';

/**
 * The demo is one job. A sheet that asks for something of this list has this value: a sheet joins by its id below, with what it
 * calls its cells.
 */
const JOB = {
  focal: 120,
  draw: 150,
  filters: '1/3',
  reading: 22,
  readingTenths: 6,
  recycle: 1.2,
  pause: 1,
  allowed: 40,
} as const;
type Part = keyof typeof JOB;

/** What a sheet calls its cells where that is not the name above. */
const SHEETS: Readonly<Record<string, Partial<Record<string, Part>>>> = {
  'pops-build': {},
  'depth-options': {},
  'lights-on-set': { filter: 'filters' },
  'pops-plan': { filter: 'filters' },
  'shot-record': {},
};

const HEADS = ['Alder 600', 'Birch 1200', 'Cedar 2400', 'Hazel 400'] as const;
/** Least and most energy of each head in Ws. */
const LIMITS: Readonly<Record<string, readonly [least: number, most: number]>> = {
  'Alder 600': [9.375, 600],
  'Birch 1200': [18.75, 1200],
  'Cedar 2400': [37.5, 2400],
  'Hazel 400': [6.25, 400],
};

function inputsOf(id: string): ReadonlyMap<string, TemplateValue> {
  const fields = templateOf(id).blocks.flatMap((block) => (block.kind === 'form' ? block.fields : []));
  return new Map(
    fields.flatMap((field: Field) => [
      ...(field.formula === undefined ? [[field.id, field.value ?? null] as const] : []),
      ...(field.tenths ? [[field.tenths.id, field.tenths.value] as const] : []),
    ]),
  );
}

describe.each(Object.entries(SHEETS))('%s', (id, names) => {
  test('has the demo job wherever it asks for a part of it', () => {
    const found = [...inputsOf(id)].flatMap(([cell, value]) => {
      const part = names[cell] ?? cell;
      return part in JOB ? [[part, value] as const] : [];
    });
    expect(found.length).toBeGreaterThanOrEqual(3);
    for (const [part, value] of found) expect(value, part).toBe(JOB[part as Part]);
  });
});

test('heads are those of the job, with their limits', () => {
  const lights = templateOf('lights-on-set').blocks.find(
    (block): block is TemplateTable => block.kind === 'table' && block.id === 'Lights',
  ) as TemplateTable;
  const given = lights.columns.filter(({ formula }) => formula === undefined).map(({ id }) => id);
  const [head, part, least, most] = ['Head', 'Part', 'Least', 'Most'].map((name) => given.indexOf(name)) as [
    number,
    number,
    number,
    number,
  ];
  const heads = lights.rows.filter((row) => row[part] !== 'ambient');
  expect(new Set(heads.map((row) => row[head]))).toEqual(new Set(HEADS));
  for (const row of heads) expect([row[least], row[most]]).toEqual(LIMITS[String(row[head])]);
});

/** Rows of a table by what stands in a column of them, each cell by its column. */
function rowsBy(id: string, name: string): readonly Readonly<Record<string, TemplateValue>>[] {
  const table = templateOf(id).blocks.find(
    (block): block is TemplateTable => block.kind === 'table' && block.id === name,
  ) as TemplateTable;
  const given = table.columns.filter(({ formula }) => formula === undefined).map((column) => column.id);
  return table.rows.map((row) => Object.fromEntries(given.map((column, i) => [column, row[i] ?? null])));
}

/** What a sheet says of its heads as well: its columns, where they are called otherwise than in Heads. */
const OF_HEADS: readonly (readonly [id: string, table: string, called: Readonly<Record<string, string>>])[] =
  [
    ['lights-on-set', 'Lights', {}],
    ['pops-plan', 'Plan', {}],
    ['mains-plan', 'Load', {}],
    ['shot-record', 'Record', {}],
    ['fleet-compare', 'Fleet', { Owned: 'Number' }],
    ['freeze-check', 'FreezeHeads', { 'Full power': 'Most', 'Least power': 'Least', 'Full shows': 'Top' }],
  ];
/** What belongs to the set and not to the model. */
const OF_THE_SET = ['Head', 'Number', 'Reading', 'Tenths', 'Distance', 'Modifier'];

test.each(OF_HEADS)('%s says of its heads what Heads says of them', (id, table, called) => {
  const models = new Map(rowsBy('heads', 'Models').map((row) => [row['Head'], row]));
  expect([...models.keys()]).toEqual(HEADS);
  for (const [name, [least, most]] of Object.entries(LIMITS))
    expect(models.get(name)).toMatchObject({ Least: least, Most: most });
  let compared = 0;
  for (const row of rowsBy(id, table)) {
    const model = models.get(row['Head'] ?? null);
    if (!model) continue;
    for (const [column, value] of Object.entries(row)) {
      const name = called[column] ?? column;
      if (OF_THE_SET.includes(column) || !(name in model)) continue;
      compared++;
      expect(String(value), `${row['Head']} ${column}`).toBe(String(model[name]));
    }
  }
  expect(compared).toBeGreaterThanOrEqual(20);
});

test.each(['pops-build', 'depth-options'])('%s says of its slowest head what Heads says of it', (id) => {
  const models = rowsBy('heads', 'Models');
  const inputs = inputsOf(id);
  const head = models.find((row) => row['Head'] === inputs.get('head'));
  const slowest = Math.max(...models.map((row) => Number(row['Recycle'])));
  expect([head?.['Recycle'], inputs.get('recycle')]).toEqual([slowest, slowest]);
  expect(inputs.get('allowed')).toBe(head?.['In a row']);
  expect(inputs.get('cool') ?? 60).toBe(head?.['Cool']);
});

test('the lights of the plan are those on set, metered alike', () => {
  const set = rowsBy('lights-on-set', 'Lights').filter((row) => row['Part'] !== 'ambient');
  const plan = rowsBy('pops-plan', 'Plan');
  const asMetered = ['Head', 'Part', 'Power', 'Reading', 'Tenths', 'At the subject', 'Wanted'];
  for (const [i, row] of set.entries())
    for (const column of asMetered) expect(plan[i]?.[column], `${i} ${column}`).toBe(row[column]);
  expect(plan).toHaveLength(set.length);
});

test('one pop of all heads reads what the heads read together in Lights on set', async () => {
  const { cell } = await calculated(templateOf('lights-on-set'));
  // f/22 is 2^4.5
  const tenths = Math.round(20 * Math.log2(Number(cell('now')) / 2 ** 4.5));
  expect(tenths).toBe(JOB.readingTenths);
});
