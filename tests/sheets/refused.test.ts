import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { TEMPLATES } from '../../src/sheets/templates';

const { readTemplate } = createRequire(import.meta.url)('../../src/build/templates.cjs') as {
  readTemplate: (file: string, text: string) => unknown;
};

/** A small template that is right, so that each test breaks one thing. */
const good = {
  id: 'trial',
  name: 'Trial',
  answers: 'What is it?',
  start: 'Type here.',
  words: ['trial'],
  columns: [20, 10, 10],
  freezeRows: 2,
  landscape: false,
  blocks: [
    {
      kind: 'form',
      title: 'Form',
      at: 'A4',
      fields: [
        { id: 'reading', label: 'Reading', quantity: 'aperture', value: 8 },
        { id: 'recycle', label: 'Recycle', quantity: 'duration', value: 2 },
        { id: 'exact', label: 'Exactly', quantity: 'aperture', formula: '=SWEEP.FNUMBER({reading})' },
        { id: 'twice', label: 'Twice', quantity: 'aperture', formula: '=SWEEP.POPSREADING({exact},4)' },
      ],
    },
    {
      kind: 'table',
      title: 'Table',
      at: 'A10',
      id: 'Heads',
      columns: [
        { id: 'Head', quantity: 'text' },
        { id: 'Reading', quantity: 'aperture' },
        { id: 'Share', quantity: 'share', formula: '=[@Reading]^2/SUMPRODUCT(Heads[Reading]^2)' },
      ],
      rows: [
        ['Alder 600', 11],
        ['Hazel 400', 8],
      ],
    },
  ],
  charts: [],
  cautions: [],
};
type Damage = (template: any) => void; // oxlint-disable-line no-explicit-any -- the damage is the point
/** A column of formulas of their own, the second of them the one given. */
// oxlint-disable-next-line no-explicit-any
function fixed(t: any, formula: unknown): void {
  table(t).columns.push({ id: 'Live', quantity: 'aperture', fixed: 'formulas' });
  table(t).rows[0].push('=SWEEP.FNUMBER({8;"f/11"})');
  table(t).rows[1].push(formula);
}
/** A chart of the table, with other words in it. */
function charted(t: any, more: object): void { // oxlint-disable-line no-explicit-any
  t.charts.push({ type: 'line', title: 'Chart', table: 'Heads', x: 'Reading', series: ['Reading'], xTitle: 'x', yTitle: 'y', from: 'A20', to: 'C30', ...more });
} // prettier-ignore
const fields = (t: any): any[] => t.blocks[0].fields; // oxlint-disable-line no-explicit-any
const table = (t: any): any => t.blocks[1]; // oxlint-disable-line no-explicit-any

function refusal(damage: Damage): string {
  const copy = structuredClone(good);
  damage(copy);
  try {
    readTemplate('trial.json', JSON.stringify(copy));
  } catch (error) {
    return (error as Error).message;
  }
  return 'taken as it is';
}

test('the trial template itself is taken', () => {
  expect(refusal(() => undefined)).toBe('taken as it is');
});

test('a warning about its own row of a table is taken', () => {
  const inRow = { when: '=[@Share]>0.5', text: 'more than half' };
  expect(refusal((t) => (table(t).columns[2].warning = inRow))).toBe('taken as it is');
});

test('columns with a constant line are taken', () => {
  const most = { id: 'Most', quantity: 'aperture', formula: '={exact}' };
  expect(refusal((t) => (charted(t, { type: 'column', limit: 'Most' }), table(t).columns.push(most)))).toBe(
    'taken as it is',
  );
});

test('a chart with a constant line and a marked point is taken', () => {
  const most = { id: 'Most', quantity: 'aperture', formula: '={exact}' };
  const point = { name: 'Now', x: 'reading', y: 'exact' };
  expect(refusal((t) => (charted(t, { limit: 'Most', point }), table(t).columns.push(most)))).toBe(
    'taken as it is',
  );
});

const REFUSED: readonly (readonly [string, Damage, RegExp])[] = [
  ['an unknown function of ours', (t) => (fields(t)[2].formula = '=SWEEP.FNUMBR({reading})'), /^trial\.json: blocks\/0\/fields\/2\/formula: there is no function SWEEP\.FNUMBR$/],
  ['a native function outside the list', (t) => (fields(t)[2].formula = '=XLOOKUP({reading},{reading},{reading})'), /XLOOKUP is not on the list/],
  ['a number put into words by codes of one language', (t) => (fields(t)[2].formula = '=TEXT({reading},"0.0")'), /TEXT is not on the list/],
  ['pages headed by a table that is not there', (t) => (t.headsPages = 'Bulbs'), /^trial\.json: headsPages: there is no table Bulbs/],
  ['an id that is the address of a cell', (t) => (fields(t)[0].id = 'T05'), /^trial\.json: blocks\/0\/fields\/0\/id: the id T05 reads like the address of a cell/],
  ['an id that is a row in the other notation', (t) => (fields(t)[0].id = 'r'), /the id r reads like the address of a cell/],
  ['cautions where something stands', (t) => ((t.cautions = ['Hot lamps.', 'Many flashes.']), (t.cautionsAt = 'A9')), /^trial\.json: cautionsAt: A9 leaves no room for 2 lines/],
  ['cautions over the first lines', (t) => ((t.cautions = ['Hot lamps.']), (t.cautionsAt = 'A2')), /cautionsAt: A2 leaves no room for 1 lines/],
  ['a value over the words right of it', (t) => ((fields(t)[0].remark = 'as metered'), (fields(t)[0].across = 3)), /^trial\.json: blocks\/0\/fields\/0\/across: reaches over the tenths or the words/],
  ['a circle', (t) => (fields(t)[2].formula = '={twice}+1'), /goes round in a circle: exact → twice → exact/],
  ['a circle within a table', (t) => (table(t).columns[2].formula = '=[@Share]+1'), /goes round in a circle/],
  ['a wrong unit', (t) => (fields(t)[2].formula = '=SWEEP.FNUMBER({recycle})'), /\{recycle\} is in s, but text of FNUMBER is in f-number/],
  ['a wrong unit in a table', (t) => (table(t).columns[2].formula = '=SWEEP.POPSTIME(4,[@Reading])'), /\[@Reading\] is in f-number, but recycle of POPSTIME is in s/],
  ['a cell that two blocks share', (t) => (table(t).at = 'B8'), /blocks\/1\/at: shares cells with block 0/],
  ['an id that stands twice', (t) => (fields(t)[1].id = 'reading'), /the id reading stands twice/],
  ['a chain deeper than two', (t) => fields(t).push({ id: 'more', label: 'More', quantity: 'aperture', formula: '=SWEEP.POPSREADING({twice},4)' }), /ends a chain of 3 of our functions/],
  ['words at the end of a chain of three that another cell reads', (t) => {
    fields(t).push({ id: 'said', label: 'Said', quantity: 'text', formula: '=SWEEP.STOPTEXT({twice})' });
    fields(t)[1] = { id: 'more', label: 'More', quantity: 'text', formula: '={said}&"!"' };
  }, /fields\/[14]\/formula: ends a chain of 3/],
  ['words at the end of a chain of four', (t) => fields(t).push({ id: 'said', label: 'Said', quantity: 'text', formula: '=SWEEP.STOPTEXT(SWEEP.POPSREADING({twice},4))' }), /ends a chain of 4/],
  ['a number beside words at the end of a chain of three', (t) => fields(t).push({ id: 'said', label: 'Said', quantity: 'text', formula: '=SWEEP.STOPTEXT({twice})&SWEEP.POPSREADING({twice},4)' }), /ends a chain of 3/],
  ['a nested call that makes a chain of three', (t) => (fields(t)[3].formula = '=SWEEP.POPSREADING(SWEEP.FNUMBER({exact}),4)'), /ends a chain of 3/],
  ['a cell that is not there', (t) => (fields(t)[2].formula = '=SWEEP.FNUMBER({readin})'), /there is no cell \{readin\}/],
  ['a column that is not there', (t) => (table(t).columns[2].formula = '=SUM(Heads[Power])'), /table Heads has no column Power/],
  ['a table that is not there', (t) => (table(t).columns[2].formula = '=SUM(Lamps[Reading])'), /there is no table Lamps/],
  ['a row of a table outside it', (t) => (fields(t)[2].formula = '=[@Reading]'), /\[@Reading\] stands outside a table/],
  ['a warning that names a table', (t) => (fields(t)[2].warning = { when: '={exact}>MAX(Heads[Reading])', text: 'too small' }), /^trial\.json: blocks\/0\/fields\/2\/warning\/when: Heads\[Reading\] names a table, and no spreadsheet marks cells by one: let a cell of its own say it$/],
  ['a warning of a table that names a column', (t) => (table(t).columns[2].warning = { when: '=[@Share]>MAX(Heads[Share])', text: 'most' }), /^trial\.json: blocks\/1\/columns\/2\/warning\/when: Heads\[Share\] names a table/],
  ['a warning whose words ask for a cell that is not there', (t) => (fields(t)[2].warning = { when: '={exact}>5', text: '={reding}&" is too much"' }), /^trial\.json: blocks\/0\/fields\/2\/warning\/text: there is no cell \{reding\}$/],
  ['a cell of another sheet', (t) => (fields(t)[2].formula = '={pops-build:pops}*2'), /\{ is not understood/],
  ['too few values', (t) => (fields(t)[3].formula = '=SWEEP.POPSREADING({exact})'), /SWEEP\.POPSREADING takes 2 to 6 values, not 1/],
  ['too many values', (t) => (fields(t)[2].formula = '=SWEEP.FNUMBER({reading},1,2)'), /SWEEP\.FNUMBER takes 1 to 2 values, not 3/],
  ['a function that spills', (t) => (fields(t)[2].formula = '=SWEEP.LIGHTSHARE({reading})'), /would spill/],
  ['an open bracket', (t) => (fields(t)[2].formula = '=SUM({reading}'), /a bracket is not closed/],
  ['a defined name', (t) => (fields(t)[2].formula = '=Reading*2'), /is not understood/],
  ['a map of a column that is not there', (t) => (table(t).map = ['Reading', 'Power']), /^trial\.json: blocks\/1\/map: table Heads has no column Power$/],
  ['a map of words', (t) => (table(t).map = ['Head', 'Reading']), /blocks\/1\/map: Head holds words, and only numbers have a least and a most$/],
  ['a map of columns that do not lie side by side', (t) => {
    table(t).columns.splice(2, 0, { id: 'Part', quantity: 'text', formula: '="x"' });
    table(t).map = ['Reading', 'Share'];
  }, /blocks\/1\/map: Reading, Share do not lie side by side$/],
  ['a map in another order than the columns', (t) => (table(t).map = ['Share', 'Reading']), /blocks\/1\/map: Share, Reading do not lie side by side$/],
  ['a cell that accepts nothing in particular', (t) => (fields(t)[0].accepts = { message: 'A number.' }), /blocks\/0\/fields\/0\/accepts: must match a schema in anyOf/],
  ['an unknown quantity', (t) => (fields(t)[0].quantity = 'furlongs'), /blocks\/0\/fields\/0\/quantity: furlongs is none of/],
  ['a block in the first rows', (t) => (t.blocks[0].at = 'A2'), /A2 lies in the first 3 rows/],
  ['a demo row of the wrong length', (t) => table(t).rows.push(['Cedar 2400']), /blocks\/1\/rows\/2: has 1 values for 2 columns without a formula/],
  ['a demo value that begins like a formula', (t) => (table(t).rows[0][0] = '=1+1'), /^trial\.json: blocks\/1\/rows\/0: Head holds no formulas$/],
  ['a demo value that begins like a sum', (t) => (table(t).rows[0][0] = '+1+1'), /^trial\.json: blocks\/1\/rows\/0\/0: must match pattern/],
  ['a value where rows have formulas of their own', (t) => fixed(t, 8), /blocks\/1\/rows\/1: Live must hold a formula$/],
  ['a wrong formula of one row', (t) => fixed(t, '=SWEEP.FNUMBER({recycle})'), /blocks\/1\/rows\/1: \{recycle\} is in s/],
  ['a chain through formulas of rows', (t) => {
    fixed(t, '=SWEEP.FNUMBER({exact})');
    fields(t)[3].formula = '=SWEEP.POPSREADING(SUM(Heads[Live]),4)';
  }, /ends a chain of 3/],
  ['a column that is both fixed and a formula', (t) => (table(t).columns[2].fixed = 'values'), /blocks\/1\/columns\/2: is both fixed and a formula/],
  ['constants that are not closed', (t) => (fields(t)[2].formula = '=SUM({1;2)'), /\{ is not understood/],
  ['a missing property', (t) => delete t.start, /^trial\.json: the whole: must have required property 'start'/],
  ['a property nobody knows', (t) => (fields(t)[0].colour = 'red'), /must NOT have additional properties \(colour\)/],
  ['a cell that is both input and formula', (t) => (fields(t)[2].value = 3), /blocks\/0\/fields\/2/],
  ['a chart of a column that is not there', (t) => t.charts.push({ type: 'line', title: 'Chart', table: 'Heads', x: 'Head', series: ['Power'], xTitle: 'x', yTitle: 'y', from: 'A20', to: 'C30' }), /charts\/0: table Heads has no column Power/],
  ['a chart of a table that is not there', (t) => charted(t, { table: 'Lamps' }), /^trial\.json: charts\/0\/table: there is no table Lamps$/],
  ['a constant line that differs from row to row', (t) => charted(t, { limit: 'Share' }), /charts\/0: a constant line is the same in every row: let a formula of Share say it/],
  ['a constant line of inputs', (t) => charted(t, { limit: 'Reading' }), /charts\/0: a constant line is the same in every row/],
  ['a constant line that is not there', (t) => charted(t, { limit: 'Most' }), /charts\/0: table Heads has no column Most/],
  ['a constant line in another unit', (t) => (charted(t, { limit: 'Wait' }), table(t).columns.push({ id: 'Wait', quantity: 'duration', formula: '={recycle}' })), /charts\/0: Wait is in s, but its axis in f-number/],
  ['a marked point of a cell that is not there', (t) => charted(t, { point: { name: 'Now', x: 'pops', y: 'exact' } }), /charts\/0: there is no cell \{pops\}/],
  ['a marked point in another unit', (t) => charted(t, { point: { name: 'Now', x: 'exact', y: 'recycle' } }), /charts\/0: \{recycle\} is in s, but its axis in f-number/],
  ['a marked point over words', (t) => charted(t, { x: 'Head', point: { name: 'Now', x: 'exact', y: 'exact' } }), /charts\/0: a marked point needs numbers along the axis/],
  ['names of points that are not there', (t) => charted(t, { names: 'Most' }), /charts\/0: table Heads has no column Most/],
  ['names of points that are numbers', (t) => charted(t, { names: 'Share' }), /charts\/0: Share holds no names/],
  ['names of points over words', (t) => charted(t, { x: 'Head', names: 'Head' }), /charts\/0: named points need numbers along the axis/],
  ['columns with a constant line that differs from row to row', (t) => charted(t, { type: 'column', limit: 'Share' }), /charts\/0: a constant line is the same in every row/],
  ['a field in the list that is not there', (t) => (t.inList = { fields: ['exact', 'pops'] }), /^trial\.json: inList: there is no labelled field pops$/],
  ['a field in the list that goes on from the line above', (t) => (delete fields(t)[2].label, (t.inList = { fields: ['exact'] })), /inList: there is no labelled field exact$/],
  ['a table in the list that is not there', (t) => (t.inList = { table: 'Lamps', columns: ['Head', 'Reading'] }), /^trial\.json: inList: there is no table Lamps$/],
  ['a column in the list that is not there', (t) => (t.inList = { table: 'Heads', columns: ['Head', 'Power'] }), /^trial\.json: inList: table Heads has no column Power$/],
  ['a table in the list without columns', (t) => (t.inList = { table: 'Heads' }), /inList: must have required property 'columns'/],
  ['an id that is not the file’s name', (t) => (t.id = 'other'), /id: must be the file's name, trial/],
  ['a bad sheet name', (t) => (t.name = 'a/b'), /name: must match pattern/],
]; // prettier-ignore

describe('a damaged template is refused with file, place and reason', () => {
  for (const [what, damage, words] of REFUSED) test(what, () => expect(refusal(damage)).toMatch(words));
  test('but not for words at the end of a chain of three that nothing reads', () =>
    expect(
      refusal((t) =>
        fields(t).push({
          id: 'said',
          label: 'Said',
          quantity: 'text',
          formula: '=SWEEP.STOPTEXT({twice})',
        }),
      ),
    ).toBe('taken as it is'));
  test('a file that is no JSON', () =>
    expect(() => readTemplate('trial.json', '{"id":')).toThrow(/^trial\.json: the whole: is no JSON/));
});

test('the templates of the project are all taken, and there are some', () => {
  expect(TEMPLATES.length).toBeGreaterThanOrEqual(2);
});
