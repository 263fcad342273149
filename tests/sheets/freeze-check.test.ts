import { describe, expect, test } from 'vitest';
import type { Template, TemplateValue } from '../../src/sheets/template';
import { calculated, templateOf, type Typed, typedOver } from './support';

const demo = templateOf('freeze-check');

/** The sheet with other inputs: fields by id, and rows of heads. */
const withInputs = (fields: Typed, rows?: readonly (readonly TemplateValue[])[]): Template =>
  typedOver(demo, fields, rows && { Heads: rows });

const cellsOf = async (template: Template) => (await calculated(template)).at;

/** Worked by hand. A fall of 0.35 m from rest ends at √(2 × 9.80665 × 0.35) = 2.62004866 m/s. */
const WORKED: readonly (readonly [cell: string, value: number | string, working: string])[] = [
  ['B18', 2.62004866, 'the fall is faster than 1.2 m/s'],
  ['B21', 0.26717061, '√(2 × 0.35 / 9.80665)'],
  ['B16', 0.0001435088, '10 px × 3.76 µm / (2.62 m/s × 0.1)'],
  ['B17', 6968.21453, 'one over it'],
  ['K26', 2600, 'the row of 300 Ws'],
  ['L26', 26.800825, '2.62 m/s × 0.1 / 2600 / 3.76 µm'],
  ['N26', 'no', '26.8 px are more than 10'],
  ['O26', 118.39475, 'its time goes with the energy there: 75 Ws × 11000 / 6968.21'],
  ['P26', 1.3413574, 'log2(300 / 118.388)'],
  ['S26', 11.3137085, 'f/11 is 2^3.5'],
  ['T26', 7.107397, '11.3137 × √(118.388 / 300)'],
  ['L27', 36.674813, '2.62 m/s × 0.1 / 1900 / 3.76 µm'],
  ['O27', 'none', '1/2600 is its shortest'],
  ['T27', '', 'no power, no reading'],
  ['L28', 69.682145, 'the row of 1200 Ws: 1/1000'],
  ['O28', 'none', 'it gets longer when turned down'],
  ['N29', 'yes', '1/8800 s is shorter than 1/6968 s'],
  ['L29', 7.9184256, '2.62 m/s × 0.1 / 8800 / 3.76 µm'],
  ['O29', 66.565895, '50 Ws × 2^(log2(8800/6968.21) / log2(8800/5000))'],
  ['P29', 0, 'it may even be turned up'],
  ['B15', 1, 'Hazel alone'],
];

describe('Freeze check', () => {
  test('the demo job, cell by cell', async () => {
    const cell = await cellsOf(demo);
    for (const [at, value, working] of WORKED)
      if (typeof value === 'string') expect(cell(at), `${at}: ${working}`).toBe(value);
      else expect(Math.abs((cell(at) as number) - value), `${at}: ${working}, not ${String(cell(at))}`).toBeLessThan(1e-5 * Math.max(1, value)); // prettier-ignore
  });

  test('a rim, and a speed that is known, count where they are faster', async () => {
    const spun = await cellsOf(withInputs({ diameter: 0.3, turns: 600 }));
    // 0.3 m × π × 10 turns a second
    expect(spun('B20')).toBeCloseTo(9.42477796, 6);
    expect(spun('B18')).toBe(spun('B20'));
    const known = await cellsOf(withInputs({ moves: 20, drop: null }));
    expect([known('B18'), known('B19'), known('B21')]).toEqual([20, '', '']);
  });

  test('tables of t0.5 are held against a limit that is shorter by log10 2', async () => {
    const cell = await cellsOf(withInputs({ level: 't0.5' }));
    expect(cell('B16')).toBeCloseTo(0.0001435088 * 0.30103, 9);
    // and the smear grows by what lies below the half
    expect(cell('L26')).toBeCloseTo(26.800825 / 0.30103, 3);
  });

  test('nothing is guessed beyond a table, and a head without one stays blank', async () => {
    const cell = await cellsOf(
      withInputs({}, [
        ['Alder 600', 700, 600, '1/1100', 300, '1/2600', null, null, null, null, 11, 0],
        ['Birch 1200', 300, null, null, null, null, null, null, null, null, null, 0],
      ]),
    );
    expect([cell('K26'), cell('L26'), cell('N26')]).toEqual(['not in table', '', '']);
    expect([cell('K27'), cell('L27'), cell('O27'), cell('T27')]).toEqual(['', '', '', '']);
    expect(cell('D15')).toBe('one pop only: several pops do not freeze');
  });

  test('says so when no head is short enough', async () => {
    const cell = await cellsOf(withInputs({ smear: 1 }));
    expect([cell('B15'), cell('D15')]).toEqual([0, '! no head is short enough as it is set']);
  });
});
