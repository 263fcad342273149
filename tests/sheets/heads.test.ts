import { describe, expect, test } from 'vitest';
import { layout } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
import { calculated, templateOf, typedOver, wordsBeside } from './support';

const demo = templateOf('heads');
const models = layout(demo).tables.get('Models') as TemplateTable;
const TYPED = models.columns.filter(({ formula }) => formula === undefined).map(({ id }) => id);

type Model = Readonly<Record<string, TemplateValue>>;
/** The sheet with such models. */
async function sheetOf(rows: readonly Model[]) {
  for (const row of rows)
    for (const name of Object.keys(row)) if (!TYPED.includes(name)) throw new Error(`no column ${name}`);
  const template = typedOver(demo, {}, { Models: rows.map((row) => TYPED.map((id) => row[id] ?? null)) });
  const sheet = await calculated(template);
  return {
    ...sheet,
    model: (column: string, row: number) => sheet.column('Models', column)[row - 1],
    glance: (column: string, row: number) => sheet.column('Glance', column)[row - 1],
    says: (row: number) => sheet.column('Glance', 'Note')[row - 1],
    beside: (id: string) => wordsBeside(template, sheet, id),
  };
}

/** All that a row needs. */
const rowan: Model = { Head: 'Rowan 800', Number: 2, Most: 800, Least: 25, Step: '0.1', Scale: 'energy' };

describe('the demo job', () => {
  test('in all: how many heads, and their energy', async () => {
    const sheet = await calculated(demo);
    // 2 + 1 + 1 + 3 heads; 2 × 600 + 1200 + 2400 + 3 × 400 Ws
    expect(['whole', 'howMany', 'energy'].map((id) => sheet.cell(id))).toEqual([4, 7, 6000]);
  });
  test('at a glance: the range of each, and how fast it is', async () => {
    const sheet = await calculated(demo);
    const glance = (column: string) => sheet.column('Glance', column).slice(0, 5);
    // 600/9.375, 1200/18.75, 2400/37.5 and 400/6.25 are all 64, 2^6
    expect(glance('Stops')).toEqual([6, 6, 6, 6, '']);
    expect(glance('Recycle')).toEqual([0.6, 0.9, 1.2, 0.8, '']);
    expect(glance('Number')).toEqual([2, 1, 1, 3, '']);
    // what was typed, with the tenths as a meter shows them
    expect(glance('Note')[1]).toBe('metered f/32 +0.2 at 2 m, 1200 Ws, octagon 90 cm');
  });
  test('how short: in a line, as it was typed', async () => {
    const sheet = await calculated(demo);
    const lines = sheet.column('Durations', 'As printed');
    expect(lines[3]).toBe('t0.5, Ws: 400: 320 µs, 200: 120 µs, 100: 45 µs, 50: 20 µs');
    expect(lines.slice(4).join('')).toBe('');
    expect(sheet.errors).toEqual([]);
  });
});

test('a row with what every head has is whole; what only some sheets ask for may be left blank', async () => {
  const sheet = await sheetOf([rowan]);
  expect([sheet.model('Lacks', 1), sheet.says(1), sheet.glance('Stops', 1)]).toEqual(['', '', 5]);
  // 2 × 800
  expect([sheet.cell('howMany'), sheet.cell('energy')]).toEqual([2, 1600]);
});

test('a head of one fixed power has no step', async () => {
  const sheet = await sheetOf([{ ...rowan, Least: 800, Step: null }]);
  expect([sheet.model('Lacks', 1), sheet.glance('Stops', 1)]).toEqual(['', 0]);
});

test('a name that stands twice is flagged in both rows, whatever its case, and nothing is added up', async () => {
  const sheet = await sheetOf([rowan, { ...rowan, Head: 'ROWAN 800' }, { ...rowan, Head: 'Aspen' }]);
  expect(sheet.column('Models', 'Lacks')).toEqual(['twice', 'twice', '']);
  expect(sheet.says(2)).toBe('stands twice in this list: name the two apart, or say two under Number');
  expect([sheet.cell('whole'), sheet.cell('howMany'), sheet.cell('energy')]).toEqual([1, '', '']);
  expect(sheet.beside('whole')).toBe('! row 1 is not ready: twice');
});

test('an empty row between heads is none', async () => {
  const sheet = await sheetOf([rowan, {}, { ...rowan, Head: 'Aspen' }]);
  expect([sheet.cell('whole'), sheet.cell('howMany'), sheet.says(2)]).toEqual([2, 4, '']);
});

/** A date as a spreadsheet keeps it. */
const DATE = 45658;
const BAD: readonly (readonly [column: string, bad: readonly TemplateValue[], lacks: string, says: RegExp])[] = [
  ['Head', [null, '  '], 'head', /^type its name$/],
  ['Number', [null, 0, 1.5, 'two', DATE, -1], 'number', /^type how many there are/],
  ['Most', [null, 0, 'full', '800 W', -5, DATE], 'most', /^type its most Ws/],
  ['Least', [null, 0, 'low', 801, -5], 'least', /^type its least Ws, not above its most$/],
  ['Step', [null, 0, 'tenths', 3], 'step', /^choose the step of its dial/],
  ['Scale', [null, 'numbers', 0], 'scale', /^choose what its display shows/],
  ['Top', ['10', 7], 'top', /^Top: what the scale stops shows/],
  ['Recycle', ['fast', -1, DATE, 601], 'recycle', /^Recycle: seconds/],
  ['Recycle least', [0.9, 'fast', -1], 'recycle', /^Recycle: seconds/],
  ['In a row', [0.5, 'some', -3], 'row', /^In a row: a whole number/],
  ['Cool', ['a while', -1, DATE], 'cool', /^Cool: seconds/],
  ['Lamp', ['bright', -1, DATE], 'lamp', /^Lamp: watts/],
  ['Plate', ['ten', -1, 101], 'plate', /^Plate: amperes/],
  ['Rate', ['dear', -1], 'rate', /^Rate: hire/],
  ['Level', [null, 't0.7', 0.1], 'level', /^choose the level/],
  ['Flash 1', [null, 'short', '2 m'], 'flash', /^its durations/],
  ['Energy 1', [null, 900], 'flash', /^its durations/],
  ['Reading', [null, 'bright', 0, 400, 16.3], 'reading', /^its reading/],
  ['Tenths', [12, 'three'], 'reading', /^its reading/],
  ['Read at', [null, 5, 900], 'reading', /^its reading/],
  ['Distance', [null, 0, 'near', 30], 'reading', /^its reading/],
]; // prettier-ignore

test.each(BAD)('a row says what it lacks: %s', async (column, bad, lacks, says) => {
  const whole: Model = {
    ...rowan, Recycle: 0.8, Level: 't0.1', 'Energy 1': 800, 'Flash 1': '1/500',
    Reading: 16, Tenths: 2, 'Read at': 400, Distance: 2,
  }; // prettier-ignore
  const rows = bad.map((value, i) => ({ ...whole, Head: `R${i}`, [column]: value }));
  const sheet = await sheetOf([{ ...whole, Head: 'Good' }, ...rows]);
  expect(sheet.column('Models', 'Lacks')).toEqual(['', ...bad.map(() => lacks)]);
  for (const [i] of bad.entries()) {
    expect(sheet.says(i + 2)).toMatch(says);
    expect([sheet.glance('Most', i + 2), sheet.glance('Stops', i + 2)]).toEqual(['', '']);
  }
  expect([sheet.cell('whole'), sheet.cell('howMany')]).toEqual([1, '']);
  expect(sheet.errors).toEqual([]);
});

test('a head of the scale stops needs its top', async () => {
  const sheet = await sheetOf([
    { ...rowan, Scale: 'stops' },
    { ...rowan, Head: 'B', Scale: 'stops', Top: 'none' },
    { ...rowan, Head: 'C', Scale: 'stops', Top: '10' },
    { ...rowan, Head: 'D', Scale: 'stops', Top: 'ten' },
  ]);
  expect(sheet.column('Models', 'Lacks')).toEqual(['top', '', '', 'top']);
});

test('more models than the answers have rows are counted, and the sheet says so', async () => {
  const sheet = await sheetOf(Array.from({ length: 13 }, (_, i) => ({ ...rowan, Head: `R${i}` })));
  expect([sheet.cell('howMany'), sheet.beside('whole')]).toEqual([
    26,
    '! only the first 12 models stand below',
  ]);
});

test('empty, it says nothing and shows nothing', async () => {
  const sheet = await calculated(demo, false);
  expect(['whole', 'howMany', 'energy'].map((id) => sheet.cell(id))).toEqual(['', '', '']);
  for (const id of ['Head', 'Number', 'Stops', 'Note'])
    expect(new Set(sheet.column('Glance', id)), id).toEqual(new Set(['']));
  expect(sheet.errors).toEqual([]);
});

test('the answers fill one page, what the makers print and the list begin another', () => {
  const { sheet } = planAlone(demo, true);
  expect(sheet.page.breaks).toEqual([26]);
  const lowest = Math.max(...sheet.cells.map(({ row }) => row));
  const table = sheet.tables.find(({ name }) => name === 'Models');
  expect((table?.area.row ?? 0) + (table?.area.rows ?? 0) - 1).toBe(lowest);
});
