import { describe, expect, test } from 'vitest';
import { rowOf } from '../../src/catalogue';
import { Q } from '../../src/catalogue/quantities';
import { type AnyRow, type Arg, choice, flag, maybe, one, withDefault } from '../../src/catalogue/types';
import {
  answerText,
  argumentHelp,
  cellText,
  columnsOf,
  exampleAnswer,
  exampleFormula,
  fallbackText,
  formsText,
  functionName,
  resultText,
  signature,
  sourceWords,
  unitOf,
} from '../../src/catalogue/words';
import { ABOVE_ZERO } from '../../src/exposure/core/range';

const row = (id: string): AnyRow => rowOf(id) as AnyRow;
const argument = (id: string, name: string): Arg =>
  (row(id).args as readonly Arg[]).find((arg) => arg.name === name) as Arg;

describe('what to write for an argument', () => {
  test('are the forms of its quantity', () =>
    expect(formsText(one('power', 'Power', Q.energy))).toBe('400, 400 Ws, 400 J, 1.2 kJ'));
  test('are its words, in quotes', () =>
    expect(formsText(choice('basis', 'Basis', ['sum', 'each']))).toBe('"sum", "each"'));
  test('is TRUE or FALSE', () => expect(formsText(flag('marked', 'Marked'))).toBe('TRUE or FALSE'));
  test('depends on a word where another argument decides between many, four forms of each', () => {
    const of = { time: Q.duration, energy: Q.energy, iso: Q.iso };
    expect(formsText(one('from', 'From', { by: 'scale', of }))).toMatch(
      /^for time: [^,;]+(?:, [^,;]+){3}; for energy: 400, 400 Ws, 400 J, 1.2 kJ; for iso: 100, ISO 400$/,
    );
  });
  test('are the forms of both, each once, where another argument decides between two', () => {
    const both = { by: 'kind', of: { one: Q.energy, other: { ...Q.energy, forms: ['400', '2 Wh'] } } };
    expect(formsText(one('power', 'Power', both))).toBe('400, 400 Ws, 400 J, 1.2 kJ, 2 Wh');
    expect(formsText(one('blur', 'Blur', { given: 'pitch', yes: Q.pixels, no: Q.energy }))).toBe(
      [...Q.energy.forms, ...Q.pixels.forms].join(', '),
    );
  });
});

describe('the unit of an argument', () => {
  test('is that of its quantity, or of all that it may be', () => {
    expect(unitOf(one('power', 'Power', Q.energy))).toBe('Ws');
    const lengths = { by: 'kind', of: { near: Q.lensLength, far: { ...Q.lensLength, title: 'a distance' } } };
    expect(unitOf(one('length', 'Length', lengths))).toBe('mm');
  });
  test('is none where another argument decides it, and for words', () => {
    expect(unitOf(argument('STOPDIFF', 'from'))).toBe('');
    expect(unitOf(argument('STOPDIFF', 'scale'))).toBe('');
  });
});

describe('what stands in for an argument that is left out', () => {
  test('is said with its unit', () =>
    expect(fallbackText(withDefault('power', 'Power', Q.energy, 400))).toBe('Left out: 400 Ws.'));
  test('is said without a unit where there is none', () => {
    expect(fallbackText(withDefault('pupil', 'Pupil', Q.ratio, 1))).toBe('Left out: 1.');
    expect(fallbackText(choice('basis', 'Basis', ['sum', 'each']))).toBe('Left out: sum.');
    expect(fallbackText(flag('marked', 'Marked'))).toBe('Left out: FALSE.');
  });
  test('may be nothing, or there is no leaving it out', () => {
    expect(fallbackText(maybe('focal', 'Focal length', Q.lensLength))).toBe('Optional.');
    expect(fallbackText(one('focal', 'Focal length', Q.lensLength))).toBe('');
  });
});

test.each([
  [
    one('power', 'Power of the head', Q.energy, { range: ABOVE_ZERO }),
    'Power of the head (Ws, above 0). Write 400, 400 Ws, 400 J, 1.2 kJ.',
  ],
  [one('power', 'Power', Q.energy), 'Power (Ws). Write 400, 400 Ws, 400 J, 1.2 kJ.'],
  [
    { ...one('part', 'Part', { ...Q.energy, unit: '' }), range: ABOVE_ZERO },
    'Part (above 0). Write 400, 400 Ws, 400 J, 1.2 kJ.',
  ],
  [
    choice('basis', 'What is compared', ['sum', 'each']),
    'What is compared. Write "sum", "each". Left out: sum.',
  ],
])('the help of an argument in one line: %#', (arg, help) => expect(argumentHelp(arg)).toBe(help));

describe('a cell of an example', () => {
  test.each([
    [8, '8'],
    ['f/8 2/3', '"f/8 2/3"'],
    ['6" from 2"', '"6"" from 2"""'],
    [true, 'TRUE'],
    [1e-7, '1e-7'],
    [null, ''],
    [[8, 11, null], '{8;11;}'],
    [
      [
        [1, 0],
        ['50%', 1],
      ],
      '{1,0;"50%",1}',
    ],
  ])('%j is typed as %s', (cell, typed) => expect(cellText(cell)).toBe(typed));
});

describe('an example', () => {
  const number = (x: number): string => `${x}!`;
  test('is a formula', () => {
    expect(functionName(row('STOPDIFF'))).toBe('SWEEP.STOPDIFF');
    expect(exampleFormula(row('STOPDIFF'), { cells: [8, '1/60', null], gives: 1 })).toBe(
      '=SWEEP.STOPDIFF(8,"1/60",)',
    );
  });
  test('gives a value, a list or rows', () => {
    expect(exampleAnswer({ cells: [], gives: 2 }, number)).toBe('2!');
    expect(exampleAnswer({ cells: [], gives: 'f/11' }, number)).toBe('f/11');
    expect(exampleAnswer({ cells: [], gives: [2, 'off'] }, number)).toBe('2!; off');
    expect(
      exampleAnswer(
        {
          cells: [],
          gives: [
            [2, 4],
            ['', 8],
          ],
        },
        number,
      ),
    ).toBe('2!, 4!; , 8!');
  });
});

describe('the answer of a function', () => {
  test('is said by its unit, or by its title where it has none', () => {
    expect(resultText(row('STOPDIFF'))).toBe('stops');
    expect(resultText(row('LIGHTSHARE'))).toBe('a share');
  });
  test.each([
    ['STOPDIFF', 'Answer: stops.'],
    ['LIGHTSHARE', 'Answer: a share, one for each member of the list.'],
    ['DRAWFOR', 'Answer, side by side: draw, distance.'],
    [
      'TRACETABLE',
      'Answer, rows: one for each of the levels 0.1, 0.2 … 0.9, with duration (s), share before, share inside, share after.',
    ],
  ])('%s: %s', (id, text) => expect(answerText(row(id))).toBe(text));
  test('has columns where several values stand side by side, and none else', () => {
    expect(columnsOf(row('STOPDIFF'))).toEqual([]);
    expect(columnsOf(row('LIGHTSHARE'))).toEqual([]);
    expect(columnsOf(row('DRAWFOR')).map(({ name, quantity }) => [name, quantity.unit])).toEqual([
      ['draw', 'mm'],
      ['distance', 'mm'],
    ]);
    expect(columnsOf(row('TRACETABLE')).map(({ name }) => name)).toEqual([
      'duration',
      'share before',
      'share inside',
      'share after',
    ]);
  });
});

test.each([
  ['STOPDIFF', 'STOPDIFF(from, to, [scale])'],
  [
    'LIGHTSUM',
    'LIGHTSUM(readings, [readings2], [readings3], [readings4], [readings5], [readings6], [readings7], [readings8], [readings9], [readings10])',
  ],
  ['LIGHTSHARE', 'LIGHTSHARE(readings)'],
])('%s is called as %s', (id, call) => expect(signature(row(id))).toBe(call));

describe('a source', () => {
  test.each([
    [{ kind: 'published', title: 'A table' }, 'Published: A table.'],
    [{ kind: 'published', title: 'A table', place: 'column 2' }, 'Published: A table; column 2.'],
    [{ kind: 'memory', title: 'A handbook' }, 'From memory: A handbook.'],
    [{ kind: 'derived', title: 'Derived from the thin lens' }, 'Derived from the thin lens.'],
    [{ kind: 'common practice', title: 'Common practice, no source' }, 'Common practice, no source.'],
  ] as const)('%j is said as "%s"', (source, words) => expect(sourceWords(source).join('')).toBe(words));
});
