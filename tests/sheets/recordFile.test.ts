import Ajv from 'ajv';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { withValues } from '../../src/book/cells';
import { cellError } from '../../src/formula/errors';
import { hasLights, recordFromPlan } from '../../src/sheets/shotRecord/fromPlan';
import { readRecord, VERSION, writeRecord } from '../../src/sheets/shotRecord/recordFile';
import {
  errorsIn,
  isRecord,
  lightColumns,
  lostLabels,
  nextShot,
  recordIn,
  setCells,
  type ShotRecord,
  withRecord,
} from '../../src/sheets/shotRecord/shotRecord';
import { tenthsShown } from '../../src/sheets/shotRecord/tenthsShown';
import { planAlone } from '../../src/sheets/makePlan';
import type { TemplateValue } from '../../src/sheets/template';
import { demoLights } from './record';
import { calculated, templateOf, typedOver } from './support';

const template = templateOf('shot-record');
const demo = (): ShotRecord => recordIn(template, planAlone(template, true).sheet);
const schema = JSON.parse(
  readFileSync(new URL('../../src/sheets/shotRecord/record.schema.json', import.meta.url), 'utf8'),
) as { properties: Record<string, { properties: object; items: { properties: object } }> };
const isValid = new Ajv({ allowUnionTypes: true }).compile(schema);

/** A file with one thing changed. */
const changed = (change: (file: Record<string, unknown>) => void): string => {
  const file = JSON.parse(writeRecord(demo())) as Record<string, unknown>;
  change(file);
  return JSON.stringify(file);
};
const refusedOf = (text: string): string => {
  const read = readRecord(text, template);
  return 'refused' in read ? read.refused : 'was read';
};

describe('a record as a file', () => {
  test('is read back as it was typed', () => {
    const record = demo();
    expect(record.lights).toEqual(demoLights);
    expect(record.set).toMatchObject({
      shot: 'Slate & Glaze, 4',
      cameraY: -0.22,
      filters: '1/3',
      open: null,
    });
    const text = writeRecord(record);
    expect(readRecord(text, template)).toEqual(record);
    expect(recordIn(template, planAlone(withRecord(template, record), true).sheet)).toEqual(record);
    expect(isValid(JSON.parse(text))).toBe(true);
  });
  test('is whole where a word that is typed is called as a label is', () => {
    const { set, lights } = demo();
    const record = { set: { ...set, shot: 'Rise', datum: 'Datum', movements: 'Shift' }, lights };
    expect(recordIn(template, planAlone(withRecord(template, record), true).sheet)).toEqual(record);
  });
  test('is whole where a column has come in before it, and tells of a label that is gone', () => {
    const { cells, tables } = planAlone(template, true).sheet;
    const moved = {
      cells: cells.map((cell) => ({ ...cell, column: cell.column + 1 })),
      tables: tables.map((table) => ({ ...table, area: { ...table.area, column: table.area.column + 1 } })),
    };
    expect(recordIn(template, moved)).toEqual(demo());
    expect(lostLabels(template, moved)).toEqual([]);
    const heading = {
      cells: moved.cells,
      tables: moved.tables.map((table) => ({
        ...table,
        columns: table.columns.map((column) =>
          column.name === 'Aim X' ? { ...column, name: 'Looks' } : column,
        ),
      })),
    };
    expect(lostLabels(template, heading)).toEqual(['Aim X']);
    const renamed = { tables, cells: cells.map((cell) => (cell.value === 'Camera y' ? { ...cell, value: 'Kamera y' } : cell)) }; // prettier-ignore
    expect(lostLabels(template, renamed)).toEqual(['Camera y']);
  });
  test('is not made of a sheet in which a typed cell holds an error', () => {
    const { cells, tables } = planAlone(template, true).sheet;
    const withError = (is: (cell: (typeof cells)[number]) => boolean) =>
      errorsIn(template, { tables, cells: cells.map((cell) => (is(cell) ? { ...cell, value: cellError('#REF!') } : cell)) }); // prettier-ignore
    expect(withError(() => false)).toEqual([]);
    expect(withError(({ value }) => value === 'fill' || value === 'front left corner of the slate')).toEqual(['B6', expect.stringMatching(/^A\d+$/)]); // prettier-ignore
    // what is worked out, and a heading, are nothing typed
    expect(withError(({ formula, part }) => formula !== undefined || part === 'label')).toEqual([]);
  });
  test('is read from a sheet that knew no subject, surface and distance, and a label of those is missed beside others', () => {
    const { cells, tables } = planAlone(template, true).sheet;
    const isNew = ({ value }: { value: unknown }) => /^(Subject|Surface) /.test(String(value));
    const before = {
      cells: cells.filter((cell) => !isNew(cell)),
      tables: tables.map((table) => ({
        ...table,
        columns: table.columns.map((column) => (column.name === 'Distance' ? { ...column, name: 'Own' } : column)), // prettier-ignore
      })),
    };
    expect(lostLabels(template, before)).toEqual([]);
    const { set, lights } = recordIn(template, before);
    expect([set['subjectX'], set['surfaceTurn'], set['cameraX'], lights[0]?.['Distance']]).toEqual([null, null, 0.6, null]); // prettier-ignore
    const one = { tables, cells: cells.filter(({ value }) => value !== 'Surface width') };
    expect(lostLabels(template, one)).toEqual(['Surface width']);
  });
  test('of the first version is read: what it did not know is blank', () => {
    const isNew = (id: string) => /^(subject|surface)/.test(id) || id === 'Distance';
    const without = (values: object) =>
      Object.fromEntries(Object.entries(values).filter(([id]) => !isNew(id)));
    const { set, lights } = demo();
    const first = { sweeptable: 'shot-record', version: 1, set: without(set), lights: lights.map(without) };
    expect(isValid(first)).toBe(true);
    const blank = (values: object) => Object.fromEntries(Object.entries(values).map(([id, value]) => [id, isNew(id) ? null : value])); // prettier-ignore
    expect(readRecord(JSON.stringify(first), template)).toEqual({
      set: blank(set),
      lights: lights.map(blank),
    });
    // and written again it is of this version, and the same
    const read = readRecord(JSON.stringify(first), template);
    if ('refused' in read) throw new Error(read.refused);
    expect(readRecord(writeRecord(read), template)).toEqual(read);
  });
  test('holds what was typed, and nothing else', () => {
    const file = JSON.parse(writeRecord(demo())) as Record<string, unknown>;
    expect(Object.keys(file)).toEqual(['sweeptable', 'version', 'set', 'lights']);
    expect([file['sweeptable'], file['version']]).toEqual(['shot-record', VERSION]);
    expect(Object.keys(file['set'] as object).sort()).toEqual([...setCells(template)].sort());
  });
  test('has a schema that names what the sheet has', () => {
    expect(Object.keys(schema.properties['set']?.properties ?? {}).sort()).toEqual([...setCells(template)].sort()); // prettier-ignore
    expect(Object.keys(schema.properties['lights']?.items.properties ?? {}).sort()).toEqual([...lightColumns(template)].sort()); // prettier-ignore
  });
  test.each<[string, string, string]>([
    ['is no JSON', '{"sweeptable":', 'damaged'],
    ['is empty', '', 'damaged'],
    ['is a list', '[]', 'no shot record'],
    ['is something else', '{"version":1}', 'no shot record'],
    ['is newer', changed((file) => (file['version'] = 3)), 'newer Sweeptable (version 3 of the file, here 2). Update'],
    ['is between two', changed((file) => (file['version'] = 1.5)), 'version 1.5, which no Sweeptable has written'],
    ['is of the first version with a cell of the second', changed((file) => (file['version'] = 1)), 'the set has “subjectX”'],
    ['is of the first version with a column of the second', changed((file) => Object.assign(file, { version: 1, set: {}, lights: [{ Distance: 1 }] })), 'light 1 has “Distance”'],
    ['is older than all', changed((file) => (file['version'] = 0)), 'version 0, which no Sweeptable has written'],
    ['has no lights', changed((file) => delete file['lights']), 'no list of lights'],
    ['has no set', changed((file) => delete file['set']), 'the set is no list of values'],
    ['has more than we know', changed((file) => (file['user'] = 'x')), '“user”, which this Sweeptable does not know'],
    ['has a cell that we do not know', changed((file) => (file['set'] = { lens: 1 })), 'the set has “lens”'],
    ['has a column that we do not know', changed((file) => (file['lights'] = [{ Colour: 1 }])), 'light 1 has “Colour”'],
    ['has a yes for a number', changed((file) => (file['lights'] = [{ X: true }])), '“X” of light 1 is neither'],
    ['has a list in a cell', changed((file) => (file['set'] = { shot: ['x'] })), '“shot” of the set is neither'],
    ['has a book in a cell', changed((file) => (file['set'] = { shot: 'x'.repeat(32768) })), '“shot” of the set is neither'],
    ['has too many lights', changed((file) => (file['lights'] = Array.from({ length: 201 }, () => ({})))), '201 lights'],
    ['an editor has saved in other letters', new TextDecoder().decode(Buffer.from(writeRecord(demo()).replace('Slate', 'Süd'), 'latin1')), 'Save it as UTF-8'],
    ['has a cell twice', writeRecord(demo()).replace('"cameraX": 0.6', '"cameraX": 0.6, "cameraX": 6'), '“cameraX” stands there twice'],
    ['has a list twice', writeRecord(demo()).replace('"lights": [', '"lights": [], "lights": ['), '“lights” stands there twice'],
    ['has a cell twice in other letters', writeRecord(demo()).replace('"Light":', String.raw`"\u004cight": "\": {", "Light":`), '“Light” stands there twice'],
    ['has ten megabytes', changed((file) => (file['set'] = { shot: 'x'.repeat(1e7) })), '10 MB, and a shot record less than one'],
  ])('that %s is refused in words', (_, text, says) => {
    expect(refusedOf(text)).toContain(says);
    expect(refusedOf(text)).toMatch(/Nothing was changed\.$/);
    if (text.length < 1e6 && text.startsWith('{"sweeptable":"')) expect(isValid(JSON.parse(text))).toBe(false);
  }); // prettier-ignore
  test('makes no formula of a text', async () => {
    const text = '=1+1';
    const file = changed((all) => {
      all['set'] = { shot: text };
      all['lights'] = [{ Light: text, Modifier: '@SUM(1)', Gel: '+1', Head: '-1' }];
    });
    const read = readRecord(file, template);
    if ('refused' in read) throw new Error(read.refused);
    const laid = withRecord(template, read);
    const { sheet } = planAlone(laid, true);
    const held = sheet.cells.filter(({ value }) => value === text);
    expect(held.map(({ formula }) => formula)).toEqual([undefined, undefined]);
    const { cell, column } = await calculated(laid);
    expect([cell('shot'), column('Record', 'Light')[0], column('Record', 'Gel')[0]]).toEqual([text, text, '+1']); // prettier-ignore
  });
});

test('a text that looks like a key is a text, and a mark before all is none', () => {
  const { set, lights } = demo();
  const record = { set: { ...set, shot: '"cameraX": 1, {"cameraX": 2, \\"', datum: 'cameraX' }, lights };
  expect(readRecord(writeRecord(record), template)).toEqual(record);
  const odd = { set: { ...set, shot: 'Sp\ufffdt' }, lights };
  expect(readRecord(writeRecord(odd), template)).toEqual(odd);
  expect(readRecord(`\ufeff${writeRecord(record).replaceAll('\n', '\r\n')}`, template)).toEqual(record);
});

describe('the next shot', () => {
  test('has the set without its readings, and each head as it was turned last', () => {
    const record = demo();
    const lights = record.lights.map((light, i) => (i === 3 ? { ...light, 'Shows today': '7.7%' } : light));
    const next = nextShot({ ...record, lights });
    expect(next.lights.map((light) => light['Shows'])).toEqual(['1/2', '8.5', '25%', '7.7%', '600']);
    for (const light of next.lights)
      for (const id of ['Reading', 'Tenths', 'Today', 'Its tenths', 'Shows today'])
        expect(light[id]).toBeNull();
    expect([next.set['cardThen'], next.set['isoToday'], next.set['aperture']]).toEqual([null, null, 22]);
    expect(next.lights[0]).toMatchObject({ X: 0.03, 'Aim height': 0.85, Serial: 'A17', Distance: 0.8 });
    expect(next.set).toMatchObject({ subjectX: 0.6, surfaceWidth: 0.2, surfaceTiltX: 50, surfaceTurn: -15 });
  });
  test('says of each light that it is not metered, and answers nothing', async () => {
    const sheet = await calculated(withRecord(template, nextShot(demo())));
    expect(sheet.column('Again', 'Note').slice(0, 5)).toEqual(
      Array<string>(5).fill('type its reading, tenths beside it'),
    );
    expect(sheet.errors).toEqual([]);
  });
});

describe('a record of the lights of a plan', () => {
  const read = async (id: string, typed = {}, rows = {}) => {
    const made = await calculated(typedOver(templateOf(id), typed, rows));
    return withValues(made.plan, made.values);
  };
  test('of Lights on set has what each shows and reads', async () => {
    const sheet = await read('lights-on-set');
    expect([hasLights(sheet), isRecord(sheet)]).toEqual([true, false]);
    const { record, unmetered } = recordFromPlan(sheet);
    expect(unmetered).toBe(0);
    expect(record.lights.map((light) => light['Light'])).toEqual(['key', 'fill', 'rim', 'accent', 'background', 'ambient']); // prettier-ignore
    expect(record.lights[1]).toMatchObject({ Head: 'Birch 1200', Shows: '8.5', Reading: 8, Tenths: 9, Most: 1200, Scale: 'stops', Top: '10', Width: 1.2 }); // prettier-ignore
    expect(record.lights[5]).toMatchObject({ Shows: null, Reading: 2, Most: null });
    expect(record.lights.map((light) => light['Distance'])).toEqual([0.8, 1.4, 1.1, 0.9, 1.6, null]);
    expect(record.set).toMatchObject({ aperture: 22, focal: 120, draw: 150, filters: '1/3', pops: null });
  });
  test('of Pops plan has what is to be set, and says how many readings are worked out', async () => {
    const sheet = await read('pops-plan');
    const { record, unmetered } = recordFromPlan(sheet);
    expect(unmetered).toBe(5);
    // The key from f/16 and half a stop at 1/2 up by 0.7: f/22 and two tenths at 1/1 −0.3. The card of this plan says so too.
    expect(record.lights[0]).toMatchObject({ Shows: '1/1 −0.3', Reading: 22, Tenths: 2, Pops: null });
    expect(record.set).toMatchObject({ aperture: 45, focal: 120, draw: 150, filters: '1/3', pops: 3 });
    const open = sheet.cells.find(({ value }) => value === 'Shutter stands open');
    expect(record.set['open']).toBeGreaterThan(0);
    expect(record.set['open']).toBe(sheet.cells.find(({ row, column }) => row === open?.row && column === open.column + 1)?.value); // prettier-ignore
    // Metered at 2 s in the plan, so that it is no light of one exposure.
    expect(record.lights[5]).toEqual({ Light: 'ambient', Reading: 4, Tenths: 0, Metered: 'subject, at 2 s', 'At the subject': 'no' }); // prettier-ignore
    // It is the same light: a sheet laid from it counts each as ready.
    const laid = await calculated(withRecord(template, { ...record, set: { ...record.set, iso: 100 } }));
    expect(laid.column('Record', 'Lacks').slice(0, 6)).toEqual(['', '', '', '', '', '']);
    expect(laid.errors).toEqual([]);
    // Each head keeps its own setting where somebody has sorted what is to be set, or emptied a row of the plan with its formulas.
    const areaOf = (name: string) => {
      const area = sheet.tables.find((table) => table.name === name)?.area;
      if (!area) throw new Error(`There is no ${name}.`);
      return area;
    };
    const dial = areaOf('Dial');
    const last = dial.row + dial.rows - 1;
    const isDial = ({ row, column }: { row: number; column: number }): boolean =>
      row > dial.row && row <= last && column >= dial.column && column < dial.column + dial.columns;
    const sorted = sheet.cells.map((cell) => (isDial(cell) ? { ...cell, row: dial.row + 1 + last - cell.row } : cell)); // prettier-ignore
    expect(recordFromPlan({ ...sheet, cells: sorted })).toEqual(recordFromPlan(sheet));
    const second = areaOf('Plan').row + 2;
    const emptied = { ...sheet, cells: sheet.cells.filter(({ row }) => row !== second) };
    expect(recordFromPlan(emptied).record.lights).toEqual(record.lights.filter((_, i) => i !== 1));
  });
  test('is whole where a column has come in before the plan, and has no room light where none was metered', async () => {
    const sheet = await read('pops-plan', { ambient: null });
    const moved = {
      cells: sheet.cells.map((cell) => ({ ...cell, column: cell.column + 1 })),
      tables: sheet.tables.map((table) => ({
        ...table,
        area: { ...table.area, column: table.area.column + 1 },
      })),
    };
    expect(recordFromPlan(moved)).toEqual(recordFromPlan(sheet));
    const { set, lights } = recordFromPlan(moved).record;
    expect([set['aperture'], set['draw'], set['pops']]).toEqual([45, 150, 3]);
    expect(lights.map((light) => light['Light'])).not.toContain('ambient');
  });
  test('takes a check reading for one that was worked out, and no light of an empty row', async () => {
    const plan = templateOf('pops-plan').blocks.find(
      (block) => block.kind === 'table' && block.id === 'Plan',
    );
    if (plan?.kind !== 'table') throw new Error('There is no plan.');
    const given = plan.columns.filter(({ formula }) => formula === undefined).map(({ id }) => id);
    const whole = (row: readonly TemplateValue[]): TemplateValue[] => given.map((_, c) => row[c] ?? null);
    const gap = [plan.rows[0] ?? [], [], ...plan.rows.slice(1)].map(whole);
    const apart = recordFromPlan(await read('pops-plan', {}, { Plan: gap })).record.lights;
    expect(apart.map((light) => [light['Light'], light['Shows']])).toEqual([
      ['key', '1/1 −0.3'], ['fill', '9.3'], ['rim', '47 %'], ['accent', '20 %'], ['background', '975 Ws'], ['ambient', undefined],
    ]); // prettier-ignore
    const rows = plan.rows.map((row, i): TemplateValue[] =>
      given.map((id, c) => (i > 0 ? (row[c] ?? null) : id === 'Measured' ? 22 : id === 'Its tenths' ? 4 : (row[c] ?? null))),
    ); // prettier-ignore
    const { record, unmetered } = recordFromPlan(await read('pops-plan', {}, { Plan: rows }));
    expect([record.lights[0]?.['Tenths'], unmetered]).toEqual([4, 4]);
  });
});

test.each([
  [1, 1, 0], [2 ** (8.5 / 2), 16, 5], [11.3137085, 11, 0], [0.71, 0.7, 0], [200, undefined, undefined], [5.6568542 * 2 ** 0.4975, 8, 0],
])('%d is shown as f/%s and %s tenths', (reading, full, tenths) => {
  const shown = tenthsShown(reading);
  expect([shown?.full, shown?.tenths]).toEqual([full, tenths]);
}); // prettier-ignore
