import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { Q, type Quantity } from '../../src/catalogue/quantities';
import {
  type AnyRow,
  type Arg,
  choice,
  type Example,
  type ExampleCell,
  list,
  one,
  withDefault,
} from '../../src/catalogue/types';
import { exampleFormula } from '../../src/catalogue/words';
import { call } from '../../src/cells/call';
import { cellError, isCellError } from '../../src/formula/errors';
import { type CellRows, explain, type Step } from '../../src/explain/explain';
import { describeReading, givenText } from '../../src/explain/reading';

const SHEET: Readonly<Record<string, CellRows>> = {
  A1: [['']],
  B2: [[11]],
  B3: [[0]],
  B4: [[cellError('#DIV/0!')]],
  'A1:A6': [[8], [11], [null], [16], ['abc'], [22]],
  'B1:D1': [[8, 11, 16]],
  'Lights[Reading]': [['f/8'], ['11³']],
};
const look = (reference: string): CellRows | undefined => SHEET[reference];
const explained = (formula: string) => explain(formula, look);
function only(formula: string): Step {
  const { steps } = explained(formula);
  expect(steps).toHaveLength(1);
  return steps[0] as Step;
}
const answer = (formula: string) => only(formula).answers.map(({ error, text }) => error ?? text);
/** How the first cell of an argument was read. */
const meaning = (formula: string, name: string): string | undefined =>
  only(formula).arguments.find(({ arg }) => arg.name === name)?.cells[0]?.meaning;

const asCells = (cell: ExampleCell): unknown =>
  Array.isArray(cell) ? (cell as unknown[]).map((row) => [row].flat()) : cell;
const EXAMPLES: readonly (readonly [string, AnyRow, Example])[] = CATALOGUE.flatMap((row) =>
  row.examples.map((example) => [exampleFormula(row, example), row, example] as const),
);

describe('every example of the catalogue', () => {
  test.each(EXAMPLES)(
    '%s gets the answer that its cell gets, and every argument is read',
    (formula, row, example) => {
      // prettier-ignore
      const step = only(formula);
      const wanted = [call(row, example.cells.map(asCells))].flat(2);
      expect(step.answers.length + step.moreAnswers).toBe(wanted.length);
      for (const [i, { text, error }] of step.answers.entries()) {
        expect(error).toBeUndefined();
        const value = wanted[i];
        if (value === '') expect(text).toMatch(/^blank/);
        else if (typeof value === 'string') expect(text).toBe(value);
        else expect(numberIn(text)).toBeCloseTo(Number(value), digitsOf(Number(value)));
      }
      // the further lists of a sum are told only where they are there
      const told = (row.args as readonly Arg[]).filter(
        ({ takes }, i) => takes !== 'pool' || i < example.cells.length,
      );
      const names = told.map(({ name }) => name);
      expect(new Set(step.arguments.map(({ arg }) => arg.name))).toEqual(new Set(names));
      for (const { cells, unknown } of step.arguments) {
        expect(unknown).toBeUndefined();
        expect(cells.length).toBeGreaterThan(0);
        for (const cell of cells) expect(cell).toMatchObject({ isRefused: false, meaning: /\S/ });
      }
    },
  );
});

/** The number of an answer in words: 1/64 s, f/11.3, ISO 100, draw 280 mm. */
function numberIn(text: string): number {
  const [, number = '', under] =
    /(?:^|f\/|ISO |\w )(-?[\d.]+(?:e[+-]?\d+)?)(?:\/(\d+))?(?: \S+|°)?$/.exec(text) ?? [];
  return Number(number) / Number(under ?? 1);
}

/** Decimals that six figures of a number have. */
const digitsOf = (value: number): number => (value === 0 ? 6 : 4 - Math.floor(Math.log10(Math.abs(value))));

/** Units in their base, so that a sum may mix millimetres and metres. */
const UNITS: Readonly<Record<string, number>> = { 'lx·s': 1, lx: 1, 'm/s²': 1, 'm/s': 1, mm: 1e-3, µm: 1e-6, nm: 1e-9, Ws: 1, m: 1, s: 1, W: 1, V: 1, A: 1, K: 1, '°': Math.PI / 180 }; // prettier-ignore
const POWERS: Readonly<Record<string, number>> = { '²': 2, '³': 3, '⁶': 6 };

const SIZED = /([\d.]+) (lx\*s|m\/s²|m\/s|mm|µm|nm|Ws|m|s|W|V|A|K|lx)(?!\p{L})/gu;

/** What a formula with numbers comes to, worked out by itself. */
function workedOut(text: string): number {
  const code = text
    .replaceAll('lx·s', 'lx*s')
    .replace(SIZED, (_, number: string, unit: string) => `(${number}*${UNITS[unit.replace('*', '·')]})`)
    .replace(/(\d)°/g, `$1*${UNITS['°']}`)
    .replace(/[²³⁶]/g, (sign) => `**${POWERS[sign]}`)
    .replaceAll('^', '**')
    .replaceAll('−', '-')
    .replaceAll('·', '*')
    .replace(/√(\w+)/g, 'sqrt($1)')
    .replaceAll('√', 'sqrt')
    .replaceAll('π', 'PI')
    .replace(/(^|[(, ])-(log2|\()/g, '$1-1*$2');
  const [definitions, sums] = [[] as string[], [] as string[]];
  for (const part of code.split(/[;,] /))
    (/^\S+ = /.test(part) ? definitions : sums).push(part.replace(/^(\S+) = /, 'var $1 = '));
  const sum = sums[0] ?? definitions[0]?.replace(/^var (\S+) = (.*)$/, '$2');
  const { sqrt, log2, log10, log: ln, sin, asin: arcsin, E: e, PI } = Math;
  const names = { sqrt, log2, log10, ln, sin, arcsin, e, PI };
  // oxlint-disable-next-line no-implied-eval -- the test's own sums
  const run = new Function(...Object.keys(names), `${definitions.join(';')}; return ${sum};`);
  return Number(run(...Object.values(names)));
}

describe('the formula with the numbers in it', () => {
  const numbered = EXAMPLES.filter(([formula]) => only(formula).numbers !== undefined);
  test('most formulas that can be calculated have one', () => {
    expect(new Set(numbered.map(([, row]) => row.id)).size).toBeGreaterThan(30);
  });
  test.each(numbered)('%s comes to the answer', (formula, row, example) => {
    const step = only(formula);
    const unit = row.result.unit === 'mired' ? 1 : (UNITS[row.result.unit] ?? 1);
    const wanted = [call(row, example.cells.map(asCells))].flat(2)[0] as number;
    const came = workedOut(step.numbers as string) / unit;
    // Four figures of each number are shown.
    expect(Math.abs(came - wanted)).toBeLessThan(0.005 * Math.abs(wanted) + 1e-9);
  });
  test.each(EXAMPLES.filter(([formula]) => only(formula).numbers === undefined))(
    '%s says instead what its signs stand for',
    (formula, row) => {
      // prettier-ignore
      const { where } = only(formula);
      for (const { name, value } of where) {
        expect(value).toMatch(/\S/);
        const sign = name.replace(/ \(.*/, '');
        const isList = (row.args as readonly Arg[]).some((arg) => arg.takes !== 'one' && arg.name === sign);
        if (!isList) expect(row.formula).toContain(sign);
      }
    },
  );
  test.each([
    ['=SWEEP.STOPDIFF(8,11)', '2 · log2(11.31 / 8)'],
    ['=SWEEP.STOPDIFF(100,400,"iso")', 'log2(400 / 100)'],
    ['=SWEEP.STOPDIFF(4,"3:1","factor")', 'log2(3 / 4)'],
    ['=SWEEP.STOPSHIFT(8,-1)', '8 · 2^((−1) / 2)'],
    ['=SWEEP.POPSTIME(16,2,0.5,"open")', '(16 − 1) · (2 s + 0.5 s)'],
    ['=SWEEP.LIGHTRATIO(11,8,"each")', '11.31² / 8²'],
    ['=SWEEP.STOPDIFF(A1:A6,11)', '2 · log2(11.31 / 8)'],
    ['=SWEEP.BLURCIRCLE(36,24,1440)', '√((36 mm)² + (24 mm)²) / 1440'],
  ])('%s: %s', (formula, numbers) => expect(only(formula).numbers).toBe(numbers));
  test('is left out where the formula does not say all that was given, or a cell was not read', () => {
    expect(only('=SWEEP.GUIDENUMBER(8,2,100,200)').numbers).toBeUndefined();
    expect(only('=SWEEP.STOPDIFF(8,"abc")').numbers).toBeUndefined();
    expect(only('=SWEEP.STOPDIFF(8,"abc")').where).toEqual([]);
    expect(only('=SWEEP.STOPDIFF(A1:A2,8)').numbers).toBeUndefined();
  });
  test('is left out where there are too many values, and where signs are told numbers are not', () => {
    const step = only('=SWEEP.STOPDIFF(8,11,"aperture",4)');
    expect(step.answers[0]?.error).toBe('#VALUE!');
    expect(step).not.toHaveProperty('numbers');
    expect(step.where).toEqual([]);
    expect(only('=SWEEP.STOPDIFF(8,11)').where).toEqual([]);
  });
  test('a list is told by its members, blanks passed over, a recording not at all', () => {
    expect(only('=SWEEP.LIGHTSPREAD({8;0;11;16;22})').where).toEqual([
      { name: 'readings', value: '8; 11.31; 16 and 1 more' },
    ]);
    const [trace] = explain('=SWEEP.TRACETIME(1,A1:A9,0.5)', () => [0, 0, 0, 4, 3, 2, 1, 0, 0].map((x) => [x])).steps; // prettier-ignore
    expect(trace?.where.map(({ name }) => name)).not.toContain('values');
    expect(only('=SWEEP.LIGHTUNMIX({1,1;1,0},{4;2})').where).toEqual([{ name: 'readings', value: '4; 2' }]);
  });
  test('every value of a list over several arguments is read', () => {
    const readings = only('=SWEEP.LIGHTSUM(8,11,16)').arguments;
    expect(readings.map(({ given }) => given)).toEqual(['8', '11', '16']);
    expect(only('=SWEEP.LIGHTSUM()').arguments).toMatchObject([{ given: '', cells: [{ given: 'blank' }] }]);
    expect(only('=SWEEP.STOPDIFF(8,11)').arguments[2]?.given).toBe('');
  });
  test('an aperture of nothing is told as no light, and no f-number', () =>
    expect(only('=SWEEP.LIGHTMINUSRANGE(8,8)').answers[0]?.text).toBe('least 0 (no light)'));
  test('signs are named by their arguments', () =>
    expect(only('=SWEEP.METERTARGET(22,1)').where).toEqual([
      { name: 'N (aperture)', value: '22.63' },
      { name: 'loss', value: '1 stop' },
      { name: 'pops', value: '1 pop' },
    ]));
});

describe('how a cell was read, in words', () => {
  /* prettier-ignore */
  test.each([
    // f-numbers: f/11 is 2^(7/2) = 11.3137, a tenth is a factor of 2^(1/20)
    ['=SWEEP.STOPDIFF(11,8)', 'from', 'the mark f/11, 11.31'],
    ['=SWEEP.STOPDIFF("f/11",8)', 'from', 'the mark f/11, 11.31'],
    ['=SWEEP.STOPDIFF(8,8)', 'from', 'the mark f/8'],
    ['=SWEEP.STOPDIFF(11.3,8)', 'from', '11.3, as it stands'],
    ['=SWEEP.STOPDIFF("11.3",8)', 'from', '11.3, as it stands'],
    ['=SWEEP.STOPDIFF("11 exact",8)', 'from', '11, exactly as written'],
    ['=SWEEP.STOPDIFF("f/8 2/3",8)', 'from', 'the mark f/10, 10.08'],
    ['=SWEEP.STOPDIFF("11³",8)', 'from', 'f/11 +0.3, 12.55'],
    ['=SWEEP.STOPDIFF("f/11+0.3",8)', 'from', 'f/11 +0.3, 12.55'],
    ['=SWEEP.STOPDIFF("f/13 half",8)', 'from', 'the mark f/13, 13.45'],
    ['=SWEEP.STOPDIFF(9.5,8)', 'from', 'the mark f/9.5, 9.514'],
    ['=SWEEP.STOPDIFF(2^3.5,8)', 'from', 'the mark f/11, 11.31'],
    ['=SWEEP.STOPDIFF(2^3.65,8)', 'from', 'f/11 +0.3, 12.55'],
    ['=SWEEP.WORKINGAPERTURE(11,1)', 'aperture', '11, as it stands'],
    ['=SWEEP.WORKINGAPERTURE(16,1)', 'aperture', '16'],
    ['=SWEEP.WORKINGAPERTURE("f/11+0.3",1)', 'aperture', 'f/11 +0.3, 12.55'],
    // times: 1/60 s is 1/64 s
    ['=SWEEP.STOPDIFF("1/60","1/125","time")', 'from', 'the mark 1/60 s, 1/64 s'],
    ['=SWEEP.STOPDIFF(1/60,"1/125","time")', 'from', 'the mark 1/60 s, 1/64 s'],
    ['=SWEEP.STOPDIFF("1/60 exact","1/125","time")', 'from', '1/60 s, exactly as written'],
    ['=SWEEP.STOPDIFF("1/125 s +0.3","1/125","time")', 'from', '1/125 s +0.3, 0.009618 s'],
    ['=SWEEP.SECONDS("4 ms")', 'text', '0.004 s'],
    ['=SWEEP.SECONDS(1/60)', 'text', '0.01667 s, as it stands'],
    ['=SWEEP.POPSTIME(4,2)', 'recycle', '2 s'],
    // speeds: ISO 125 is 100·2^(1/3)
    ['=SWEEP.STOPDIFF(125,"ISO 400","iso")', 'from', 'the mark ISO 125, ISO 126'],
    ['=SWEEP.STOPDIFF(125,"ISO 400","iso")', 'to', 'the mark ISO 400'],
    // units turned
    ['=SWEEP.METRES("80 cm")', 'text', '0.8 m'],
    ['=SWEEP.METRES("5\' 6""")', 'text', '1.6764 m'],
    ['=SWEEP.POWERFORREADING("1.2 kJ",8,11)', 'power', '1200 Ws'],
    ['=SWEEP.BELLOWSLOSS("6 in",300)', 'focal', '152.4 mm'],
    ['=SWEEP.MAGNIFICATIONLOSS("1:2")', 'magnification', '0.5'],
    ['=SWEEP.MAGNIFICATIONLOSS("infinity")', 'magnification', '0, for infinity'],
    ['=SWEEP.LUXSECONDS(8,100,"dome")', 'constant', '340 lx·s, for dome'],
    ['=SWEEP.FILTERLOSS("ND 0.9")', 'value', '7.943'],
    ['=SWEEP.HINGEFORTILT(150,5)', 'tilt', '5°'],
    // blanks, noughts, none
    ['=SWEEP.POPSFORTARGET(16,45)', 'tolerance', '0.05 stop, as nothing is given'],
    ['=SWEEP.POPSFORTARGET(16,45,1,,,,0)', 'tolerance', '0.05 stop, as 0 counts as blank'],
    ['=SWEEP.POPSFORTARGET(16,45,1,,,,"none")', 'tolerance', '0 stops, for none'],
    ['=SWEEP.POPSFORTARGET(16,45)', 'focal', 'left out, as nothing is given'],
    ['=SWEEP.POPSFORTARGET(16,45,1,"none")', 'focal', 'none: left out'],
    ['=SWEEP.METERTARGET(22,A1)', 'loss', '0 stops, as nothing is given'],
    ['=SWEEP.LUXSECONDS(8,0)', 'iso', 'ISO 100, as 0 counts as blank'],
    ['=SWEEP.POPSBUILD({8;11},{4;0})', 'pops', '4 pops'],
    // words
    ['=SWEEP.STOPDIFF(8,11)', 'scale', '“aperture”, as nothing is given'],
    ['=SWEEP.STOPDIFF(8,11,"Aperture")', 'scale', '“aperture”'],
    ['=SWEEP.SECONDS("1/60",TRUE)', 'marked', 'TRUE'],
    ['=SWEEP.SECONDS("1/60")', 'marked', 'FALSE, as nothing is given'],
  ])('%s: %s is %s', (formula, name, words) => expect(meaning(formula, name)).toBe(words));

  test('a list with one number that is no mark is read to decimals, all of it', () => {
    const meanings = (formula: string) => only(formula).arguments[0]?.cells.map((cell) => cell.meaning);
    expect(meanings('=SWEEP.LIGHTSPREAD({8.1;11})')).toEqual(['8.1, as it stands', '11, as it stands']);
    expect(meanings('=SWEEP.LIGHTSPREAD({8;11})')).toEqual(['the mark f/8', 'the mark f/11, 11.31']);
  });
  test('a blank member of a second list counts as what the catalogue says', () =>
    expect(only('=SWEEP.POPSBUILD({8;11},{4;0})').arguments[1]?.cells[1]?.meaning).toBe('0 pops, as nothing is given')); // prettier-ignore
  test('the exact value stands beside the words', () =>
    expect(only('=SWEEP.STOPDIFF(11,8)').arguments[0]?.cells).toEqual([
      expect.objectContaining({ given: '11', value: expect.closeTo(2 ** 3.5, 12) as number }),
    ]));
});

describe('one cell in words', () => {
  const read = (cell: unknown, quantity: Quantity) =>
    describeReading(cell, one('it', 'It', quantity), quantity).meaning;
  test.each<readonly [string, Quantity, string]>([
    ['1/125 s +0.3', Q.duration, '1/125 s +0.3, 0.009618 s'],
    ['1/20 half', Q.duration, 'the mark 1/20 s, 0.04419 s'],
    ['1/125', Q.duration, '0.008 s, as it stands'],
    ['1/125 s', Q.duration, '0.008 s'],
    ['f/8 2/3', Q.apertureAsTyped, 'the mark f/10, 10.08'],
    ['f/11+0.3', Q.apertureAsTyped, 'f/11 +0.3, 12.55'],
    ['f/11', Q.apertureAsTyped, '11, as it stands'],
    ['12', Q.apertureAsTyped, '12'],
    ['16', Q.apertureAsTyped, '16'],
    ['f/200', Q.aperture, '200, as it stands'],
    // two of what displays show for one mark, said as the series has it
    ['12500', Q.iso, 'the mark ISO 12800'],
    ['1/3', Q.shutterTime, 'the mark 0.3 s, 0.315 s'],
    // its tenths would stand in a cell of their own
    [String(2 ** 3.65), Q.apertureFigure, '12.55, as it stands'],
    ['100 s', Q.shutterTime, '100 s'],
    ['400 J', Q.energy, '400 Ws'],
  ])('%s: %#', (text, quantity, words) => expect(read(text, quantity)).toBe(words));
  test('that is empty is nothing, counts as something, or is the first word', () => {
    const energy = one('it', 'It', Q.energy);
    expect(describeReading(0, energy, Q.energy)).toMatchObject({
      given: '0',
      meaning: '0 counts as blank: nothing is given',
      isMissing: true,
    });
    expect(describeReading('', energy, Q.energy)).toMatchObject({
      given: 'blank',
      meaning: 'nothing is given',
      isMissing: true,
    });
    const pops = list('it', 'It', Q.pops, { blankMember: 1 });
    expect(describeReading(null, pops, Q.pops)).toMatchObject({
      meaning: '1 pop, as nothing is given',
      value: 1,
      isMissing: false,
    });
    expect(describeReading(null, pops, undefined)).toEqual({
      given: 'blank',
      meaning: 'nothing is given',
      value: undefined,
      isRefused: false,
      isMissing: true,
    });
    expect(describeReading(null, pops, Q.pops)).toMatchObject({ isRefused: false });
    // a 0 that is written with its unit, or stands in a cell preset as text, is none either
    const aperture = withDefault('it', 'It', Q.aperture, 5);
    for (const zero of [0, '0', 'f/0'])
      expect(describeReading(zero, aperture, Q.aperture).meaning).toBe('5, as 0 counts as blank');
    const word = choice('it', 'It', ['sum', 'each']);
    expect(describeReading(0, word, undefined).meaning).toBe('“sum”, as nothing is given');
    expect(describeReading('None', word, undefined).meaning).toBe('“sum”, for none');
  });
  test('that is refused is missing too', () => {
    const energy = one('it', 'It', Q.energy);
    const refused = { value: undefined, isRefused: true, isMissing: true };
    expect(describeReading(cellError('#DIV/0!', 'No.'), energy, Q.energy)).toEqual({ ...refused, given: '#DIV/0!', meaning: 'No.' }); // prettier-ignore
    expect(describeReading(cellError('#DIV/0!'), energy, Q.energy).meaning).toMatch(
      /put that cell right first/,
    );
    expect(describeReading('odd', energy, Q.energy)).toMatchObject({ ...refused, given: 'odd' });
  });
  test('that is a number taken as typed names no mark', () => {
    const aperture = one('it', 'It', Q.aperture);
    expect(describeReading(8, aperture, Q.aperture, true).meaning).toBe('8, as it stands');
    expect(describeReading(8, aperture, Q.aperture).meaning).toBe('the mark f/8');
    expect(describeReading('-1/3', one('it', 'It', Q.stops), Q.stops).meaning).toBe('-0.3333 stop');
    expect(describeReading('+0.3', one('it', 'It', Q.stops), Q.stops).meaning).toBe('0.3 stop');
  });
  test.each([
    [` ${'x'.repeat(60)} `, 'x'.repeat(60)],
    ['x'.repeat(61), `${'x'.repeat(59)}…`],
    [true, 'TRUE'],
    [1 / 3, '0.333333'],
    [cellError('#N/A'), '#N/A'],
    ['\u00a0', 'blank'],
    [{}, 'something else'],
  ])('%j is shown as %s', (cell, text) => expect(givenText(cell)).toBe(text));
});

describe('ranges', () => {
  test('whose first row is blank have no numbers to show', () => {
    const { steps } = explain('=SWEEP.STOPDIFF(A1:A2,11)', () => [[null], [8]]);
    expect(steps[0]).toMatchObject({ where: [], answers: [{}, { text: '1 stop' }] });
    expect(steps[0]?.numbers).toBeUndefined();
  });
  test('are read by the one scale that stands beside them', () => {
    const { steps } = explain('=SWEEP.STOPDIFF(A1:A2,200,"iso")', () => [[100], [400]]);
    expect(steps[0]?.arguments[0]?.cells.map((cell) => cell.meaning)).toEqual([
      'the mark ISO 100',
      'the mark ISO 400',
    ]);
  });
  test('show their first cells, and how many follow', () => {
    const step = only('=SWEEP.STOPDIFF(A1:A6,11)');
    expect(step.arguments[0]).toMatchObject({ given: 'A1:A6', more: 3 });
    expect(step.arguments[0]?.cells.map(({ given }) => given)).toEqual(['8', '11', 'blank']);
    expect(answer('=SWEEP.STOPDIFF(A1:A6,11)')).toEqual(['1 stop', '0 stops', 'blank, as nothing is given in its row']); // prettier-ignore
    expect(step.moreAnswers).toBe(3);
  });
  test('a row is read along', () => {
    expect(answer('=SWEEP.STOPDIFF(B1:D1,16)')).toEqual(['2 stops', '1 stop', '0 stops']);
    const [read] = only('=SWEEP.STOPDIFF(B1:D1,16,"aperture")').arguments;
    expect(read?.cells.map(({ given }) => given)).toEqual(['8', '11', '16']);
    expect(read?.more).toBe(0);
  });
  test('a scale that is a range decides cell by cell', () => {
    const { steps } = explain('=SWEEP.STOPDIFF(A1:A2,11,B1:B2)', (name) =>
      name === 'A1:A2' ? [[8], [400]] : name === 'B1:B2' ? [['aperture'], ['iso']] : undefined,
    );
    expect(steps[0]?.arguments[0]?.cells.map((cell) => cell.meaning)).toEqual([
      'the mark f/8',
      'the mark ISO 400',
    ]);
  });
  test('that are a row are read by the one scale too', () => {
    const { steps } = explain('=SWEEP.STOPDIFF(A1:B1,200,"iso")', () => [[100, 400]]);
    expect(steps[0]?.arguments[0]?.cells.map((cell) => cell.meaning)).toEqual([
      'the mark ISO 100',
      'the mark ISO 400',
    ]);
  });
  test('a scale that is a row decides along it', () => {
    const { steps } = explain('=SWEEP.STOPDIFF(A1:B1,11,A2:B2)', (name) =>
      name === 'A1:B1' ? [[8, 400]] : name === 'A2:B2' ? [['aperture', 'iso']] : undefined,
    );
    expect(steps[0]?.arguments[0]?.cells.map((cell) => cell.meaning)).toEqual([
      'the mark f/8',
      'the mark ISO 400',
    ]);
  });
  test('several answers side by side have their names', () =>
    expect(answer('=SWEEP.DRAWFOR(210,"1:3")')).toEqual(['draw 280 mm', 'distance 840 mm']));
  test('columns of tables', () =>
    expect(only('=SWEEP.LIGHTSUM(Lights[Reading])').arguments[0]).toMatchObject({
      more: 0,
      cells: [{}, {}],
    }));
});

describe('calls in calls', () => {
  test('the inner comes first, and its answer goes into the outer', () => {
    const { steps, remarks } = explained('=SWEEP.STOPDIFF(8,SWEEP.FNUMBER(11,3))');
    expect(steps.map(({ row }) => row.id)).toEqual(['FNUMBER', 'STOPDIFF']);
    expect(steps[1]?.arguments[1]).toMatchObject({
      given: 'SWEEP.FNUMBER(11,3)',
      cells: [{ given: '12.5533' }],
    });
    // f/8 to f/11 is one stop, and three tenths.
    expect(steps[1]?.answers).toEqual([{ text: '1.3 stops' }]);
    expect(remarks).toEqual([]);
  });
  test('a refusal of the inner is the answer of the outer, with the same sentence', () => {
    const { steps } = explained('=SWEEP.STOPDIFF(8,SWEEP.FNUMBER("abc"))');
    expect(steps[1]?.answers).toEqual(steps[0]?.answers);
    expect(steps[1]?.arguments[1]?.cells[0]).toMatchObject({ isRefused: true });
  });
  test('plain sums of numbers are known', () => {
    expect(answer('=SWEEP.STOPSHIFT(8,-1/3+(2^2-3.5)*2)')).toEqual(['f/10.0794']);
    expect(answer('=SWEEP.LIGHTRATIO(11,8&"")')).toEqual([]);
    expect(answer('=SWEEP.STOPSHIFT(8,50%)')).toEqual(['f/9.51366']);
    expect(answer('=SWEEP.STOPSHIFT(8,1/0)')).toEqual(['#DIV/0!']);
    for (const eleven of ['+@B2', '@B2', '+B2', 'B2+B3', 'B2-B3'])
      expect(answer(`=SWEEP.STOPSHIFT(8,${eleven})`)).toEqual(['f/362.039']);
    expect(answer('=SWEEP.STOPSHIFT(8,1*0)')).toEqual(['f/8']);
    for (const sum of ['-B4', '1+B4', 'B4%'])
      expect(answer(`=SWEEP.STOPSHIFT(8,${sum})`)).toEqual(['#DIV/0!']);
  });
  test.each(['"a"+1', '1+"a"', '1&2', '-"a"', '-B1:D1', '1+B1:D1', '-A1:A6', '1+A1:A6', '1 ~'])(
    '%s is left to the spreadsheet',
    (sum) => {
      const { answers, arguments: read } = only(`=SWEEP.STOPSHIFT(8,${sum})`);
      expect(answers).toEqual([]);
      expect(read[1]?.unknown).toBe(`${sum} is calculated by the spreadsheet.`);
    },
  );
});

describe('what the spreadsheet works out', () => {
  test('around a call: the call is explained, and the rest is said', () => {
    const { steps, remarks } = explained('=IF(A1="","",SWEEP.STOPDIFF(8,11))');
    expect(steps).toHaveLength(1);
    expect(remarks).toEqual([
      'IF stands around this and is the spreadsheet’s own, so the cell may show something else.',
    ]);
    expect(explained('=SWEEP.STOPDIFF(8,11)*2').remarks).toEqual([
      'A calculation stands around this and is the spreadsheet’s own, so the cell may show something else.',
    ]);
    expect(explained('=@SWEEP.STOPDIFF(8,11)').remarks).toEqual([]);
  });
  test('within a call: that argument is not known, the others are read, and there is no answer', () => {
    const step = only('=SWEEP.STOPDIFF(MAX(A1:A6),11)');
    expect(step.arguments[0]).toMatchObject({
      cells: [],
      unknown: 'MAX(A1:A6) is calculated by the spreadsheet.',
    });
    expect(step.arguments[1]?.cells[0]?.meaning).toBe('the mark f/11, 11.31');
    expect(step).toMatchObject({ answers: [], where: [], unknown: expect.stringContaining('cannot be worked out here') as string }); // prettier-ignore
  });
  test('a call around one that is not known is not known either', () => {
    const { steps } = explained('=SWEEP.STOPDIFF(8,SWEEP.FNUMBER(MAX(A1:A6)))');
    expect(steps[1]).toMatchObject({ arguments: [{}, { unknown: 'The answer of FNUMBER is not known here.' }, {}], answers: [] }); // prettier-ignore
  });
  test('a reference that the host does not know', () =>
    expect(only('=SWEEP.STOPDIFF(Z9,11)').arguments[0]?.unknown).toBe('What is in Z9 cannot be looked up from here.')); // prettier-ignore
  test('an argument whose reading another decides, where that is not known', () =>
    expect(only('=SWEEP.STOPDIFF(8,11,Z9)').arguments[0]?.unknown).toBe('How it is read depends on scale, which is not known here.')); // prettier-ignore
  test.each(['=SWEEP.STOPDIFF(8,11,B4)', '=SWEEP.STOPDIFF(8,11,"film")'])(
    'is not said to be blank where the scale that decides it is refused: %s',
    (formula) =>
      expect(only(formula).arguments[0]).toMatchObject({
        cells: [],
        unknown: 'How it is read depends on scale, which is not known here.',
      }),
  );
  test('is not read as if the argument that decides it were given, where that is an error', () =>
    expect(only('=SWEEP.FREEZETIME(2,"2 px",0.5,B4)').arguments[1]).toMatchObject({
      cells: [],
      unknown: 'How it is read depends on pixelPitch, which is not known here.',
    }));
  test('a formula without a call of ours has no steps', () => {
    for (const formula of ['=SUM(1,2)', '=B2', '8', '']) expect(explained(formula)).toEqual({ steps: [], remarks: [] }); // prettier-ignore
  });
  test('a function that there is not', () => {
    const { steps, remarks } = explained('=SWEEP.STOPDIFF(8,SWEEP.NOPE(1))');
    expect(steps[0]?.arguments[1]?.unknown).toBe('There is no function SWEEP.NOPE.');
    expect(remarks[0]).toMatch(/^There is no function SWEEP\.NOPE\./);
  });
});

test('numbers as large as a cell holds are explained too', () => {
  for (const value of ['6.546781215792284e150', '-1.7976931348623157e308', '5e-324'])
    expect(only(`=SWEEP.STOPDIFF(8,${value})`).arguments[1]?.given).toBe(value);
});

describe('refusals say what to do', () => {
  /* prettier-ignore */
  test.each([
    ['=SWEEP.STOPDIFF(8,"abc")', '#VALUE!', /cannot be read as an f-number\. Write 11/],
    ['=SWEEP.STOPDIFF(8)', '#VALUE!', /^to is missing/],
    ['=SWEEP.STOPDIFF(8,11,"time",4)', '#VALUE!', /takes 2 or 3 values, not 4/],
    ['=SWEEP.STOPDIFF(-8,11)', '#NUM!', /from must be above 0, not -8/],
    ['=SWEEP.STOPDIFF("8 2/3",11)', '#VALUE!', /write f\/8 2\/3/],
    ['=SWEEP.LIGHTMINUS(8,11)', '#N/A', /\S/],
    ['=SWEEP.STOPDIFF(B4,11)', '#DIV/0!', /A cell that this one uses shows #DIV\/0!: put that cell right first\./],
    ['=SWEEP.FLASHLEVEL(46023,0.5,0.1)', '#VALUE!', /looks like a date.*Type =1\/60/],
    ['=SWEEP.STOPDIFF(B3,11)', '#VALUE!', /^from is missing/],
  ])('%s: %s', (formula, code, words) => {
    const [first] = only(formula).answers;
    expect(first?.error).toBe(code);
    expect(first?.text).toMatch(words);
  });
  test('in a range the cell that is refused says so in its place', () => {
    const { steps } = explain('=SWEEP.STOPDIFF(A1:A2,11)', () => [[8], ['abc']]);
    expect(steps[0]?.answers.map(({ error }) => error)).toEqual([undefined, '#VALUE!']);
    expect(steps[0]?.arguments[0]?.cells.map(({ isRefused }) => isRefused)).toEqual([false, true]);
  });
  test('are those of the sheet, word for word', () => {
    const row = CATALOGUE.find(({ id }) => id === 'STOPDIFF') as AnyRow;
    const refused = call(row, [8, 'abc']);
    expect(isCellError(refused) && refused.message).toBe(only('=SWEEP.STOPDIFF(8,"abc")').answers[0]?.text);
  });
});
