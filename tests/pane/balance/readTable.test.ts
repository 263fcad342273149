import { describe, expect, test } from 'vitest';
import { isCellError } from '../../../src/formula/errors';
import { knownModels } from '../../../src/pane/balance/readHeads';
import { type ReadTable, readTable } from '../../../src/pane/balance/readTable';
import { blockOf, TABLE } from './made';

const read = (text: string, models?: ReturnType<typeof knownModels>) => readTable(blockOf(text), models, 1);
function table(text: string): ReadTable {
  const found = read(text);
  if ('faults' in found) throw new Error(found.faults.join(' '));
  return found;
}
const faults = (text: string, models?: ReturnType<typeof knownModels>): readonly string[] => {
  const found = read(text, models);
  return 'faults' in found ? found.faults : [];
};
/** The line of a point or of a row of heads, with one cell of it changed: cells are counted from 0. */
const withCell = (label: string, column: number, value: string): string =>
  TABLE.split('\n')
    .map((line) => {
      const cells = line.split('|');
      if (cells[0]?.trim() !== label) return line;
      return cells.map((cell, i) => (i === column ? value : cell)).join('|');
    })
    .join('\n');
const without = (label: string): string =>
  TABLE.split('\n')
    .filter((line) => line.split('|')[0]?.trim() !== label)
    .join('\n');
const [ALDER, CEDAR] = [7, 8];

describe('a table of points and heads', () => {
  test('is read with its powers, limits and readings', () => {
    const { heads, points, isChecked } = table(TABLE);
    expect(heads.map(({ name }) => name)).toEqual(['Alder 600', 'Cedar 2400']);
    expect(heads[0]?.head).toEqual({
      metered: 150, power: 150, pops: 1, least: 9.375, most: 600, step: 0.1, mostPops: 1, isLocked: false, mayGoOff: false,
    }); // prettier-ignore
    expect(points.map(({ name, metered: { kind, tolerance } }) => [name, kind, tolerance])).toEqual([
      ['Vessel', 'equal', 0.1],
      ['Bowl', 'equal', 0.1],
      ['Rim', 'at most', 0],
    ]);
    // f/11 is 2^3.5: its square is 128; f/8 and three tenths are 64·2^0.3
    expect(points[0]?.metered.heads[0]?.likely).toBeCloseTo(128, 9);
    expect(points[2]?.metered.heads[1]?.likely).toBeCloseTo(64 * 2 ** 0.3, 9);
    // a meter that shows tenths leaves half a tenth open
    expect(points[0]?.metered.heads[0]?.most).toBeCloseTo(128 * 2 ** 0.05, 9);
    expect(points[1]?.place).toEqual({ across: 30, up: -5 });
    expect(isChecked).toBe(false);
  });

  test('rows and columns may stand in any order, and what it need not have may be left out', () => {
    const small = 'Point|Ambient|Alder|Wanted\nTable|2|8|11\nMost|||\nLeast||9|\nMost||600|\nStep||1/3|\nMetered at||100|'; // prettier-ignore
    expect(faults(small)).toEqual(['The row “Most” stands twice.']);
    const { points, heads } = table(small.replace('Most|||\n', ''));
    expect(points[0]?.metered.ambient.likely).toBeCloseTo(4, 9);
    expect(heads[0]?.head.step).toBeCloseTo(1 / 3, 9);
  });

  test('what the table leaves blank is looked up in Heads, by the heading or by the model', () => {
    const models = knownModels(['Alder 600'], { most: [600], least: [9.375], step: ['0.1'], scale: ['fraction'], top: [''] }); // prettier-ignore
    const bare = (heading: string, rows = ''): string =>
      `Point|Wanted|${heading}\nMetered at||1/2\n${rows}Table|11|8`;
    const known = read(bare('Alder 600'), models);
    expect('heads' in known && known.heads[0]?.head.metered).toBe(300);
    expect(faults(bare('Key', 'Model||Alder 600\n'), models)).toEqual([]);
    expect(faults(bare('Elm 300'), models)).toEqual([
      '“Elm 300” is not in Heads: type its most, least, step into the table, or add it there.',
    ]);
    // without a scale 1/2 is half a watt-second, which nobody means
    expect(faults(bare('Alder 600'))).not.toEqual([]);
  });

  test.each([
    ['a blank reading', withCell('Bowl', ALDER, ''), '“Alder 600” at “Bowl” is not measured: meter it, type E where the meter shows E, or none.'], // prettier-ignore
    [
      'a text',
      withCell('Bowl', ALDER, 'bright'),
      '“Alder 600” at “Bowl”: "bright" cannot be read as an f-number.',
    ],
    ['a negative number', withCell('Bowl', ALDER, '-8'), '“Alder 600” at “Bowl”'],
    ['an error', withCell('Bowl', ALDER, '#DIV/0!'), '“Alder 600” at “Bowl” holds the error #DIV/0!.'],
    ['tenths behind a point', withCell('Bowl', ALDER, '11.3'), '11.3 can be read two ways: write 11 3 for f/11 and 3 tenths, or 11.3 exact.'], // prettier-ignore
    ['a blank target', withCell('Bowl', 1, ''), 'Wanted at “Bowl” is blank: say what it shall read, or put ignore under Kind.'], // prettier-ignore
    ['no ambient', withCell('Bowl', 6, ''), 'Ambient at “Bowl” is not measured'],
    [
      'another kind',
      withCell('Bowl', 2, 'bright'),
      'Kind at “Bowl” must be one of: equal, at least, at most, ignore.',
    ],
    [
      'another answer than yes or no',
      withCell('Locked', ALDER, 'perhaps'),
      'Locked of “Alder 600” must be yes or no.',
    ],
    ['no power', withCell('Metered at', ALDER, ''), 'Metered at of “Alder 600” is blank'],
    ['a power above the most', withCell('Metered at', CEDAR, '1200'), 'Metered at of “Cedar 2400”: setting is 1 stop above full power'], // prettier-ignore
    // 20 Ws on a display are 600 Ws turned down by 4.9 stops
    ['a power below the least', withCell('Metered at', CEDAR, '20'), 'Metered at of “Cedar 2400” is 20.1 Ws, less than its least, 37.5 Ws.'], // prettier-ignore
    ['a least above the most', withCell('Least', CEDAR, '1200'), 'Least of “Cedar 2400” is 1200 Ws, more than its most, 600 Ws.'], // prettier-ignore
    ['a text with a point before three digits', withCell('Least', CEDAR, '37.500'), 'write 37500, or 37.5. As text: 37.5000 for the second.'], // prettier-ignore
    ['no most', withCell('Most', CEDAR, ''), '“Cedar 2400” is not in Heads: type its most into the table'],
    ['half a pop', withCell('Most pops', CEDAR, '1.5'), 'Most pops of “Cedar 2400”'],
    ['a hundred pops', withCell('Most pops', CEDAR, '100'), 'Most pops of “Cedar 2400” must be a whole number from 1 up to 99, not 100.'], // prettier-ignore
    ['two points of one name', TABLE.replace('Bowl  ', 'Vessel'), 'Two points are called “Vessel”'],
    ['two heads of one name', TABLE.replace('Cedar 2400', 'Alder 600'), 'Two heads are called “Alder 600”'],
    ['a heading twice', TABLE.replace('Across', 'Within'), 'The heading “Within” stands twice.'],
    ['a point without a name', TABLE.replace('Bowl  ', ''), 'Row 17 has no name'],
    ['no readings above E at a point', withCell('Rim', ALDER, 'E').replace('8 3', 'E'), 'No head is measured at “Rim” above E'], // prettier-ignore
    ['a column of nothing but E', withCell('Vessel', ALDER, 'E').replace('|2        |11 ', '|E        |11 ').replace('|8        |8 3', '|E        |8 3'), '“Alder 600” shows E at every point'], // prettier-ignore
    ['a head set to 0', withCell('Set to', CEDAR, '0'), 'Set to of “Cedar 2400” must be above 0: where it is off, type off.'], // prettier-ignore
    ['no pops at the most', withCell('Most pops', CEDAR, '0'), 'Most pops of “Cedar 2400” must be above 0.'],
    ['pops beside no power', withCell('Pops', CEDAR, '2'), 'Pops of “Cedar 2400” is filled and Set to is blank: type the power that it is set to.'], // prettier-ignore
    ['a step that nothing has', withCell('Step', CEDAR, '1e-9'), 'Step of “Cedar 2400” must be from 0.01 up'],
    ['a column without a heading', TABLE.replace('Cedar 2400', ''), 'I5 has no heading: say in it which head that column is.'], // prettier-ignore
    ['a heading that is an error', TABLE.replace('Cedar 2400', '#REF!'), 'I5 has no heading'],
    ['a point called as a row of heads', TABLE.replace('Bowl  ', 'Top   '), 'B17 is filled, where “Top”, which tells of heads, meets “Wanted”, which tells of points. Name the point or the head otherwise.'], // prettier-ignore
    ['a head called as a column of points', TABLE.replace('|Measured', '|Measured|All lit').replace('|600 Ws    |', '|600 Ws    ||1/2'), 'K6 is filled, where “Metered at”, which tells of heads, meets “All lit”'], // prettier-ignore
    ['tenths without a space', withCell('Bowl', ALDER, '113'), '113 can be read two ways: write 11 3 for f/11 and 3 tenths, or f/113.'], // prettier-ignore
    ['tenths behind a point after <', withCell('Bowl', ALDER, '<11.3'), '11.3 can be read two ways'],
    ['something else', 'a|b\n1|2', 'This is no table to balance'],
  ])('%s is refused in words', (_, text, said) => {
    expect(faults(text).join(' ')).toContain(said);
    expect(faults(text)).toHaveLength(1);
  });

  test('E counts as anything up to the least of the meter, or what stands behind <', () => {
    const below = (cell: string, floor: number) => {
      const found = readTable(blockOf(withCell('Bowl', ALDER, cell)), undefined, floor);
      return 'points' in found ? found.points[1] : undefined;
    };
    expect(below('E', 1.4)?.metered.heads[0]).toMatchObject({ least: 0, most: 1.4 ** 2 });
    expect(below('E', 1.4)?.below).toEqual(['Alder 600']);
    expect(below('<2', 1)?.metered.heads[0]).toMatchObject({ least: 0, most: 4 });
    expect(below('f/113', 1)?.metered.heads[0]?.likely).toBeCloseTo(113 ** 2, 9);
    expect(below('128', 1)?.metered.heads[0]?.likely).toBeCloseTo(128 ** 2, 9);
    // f/1.4 is √2: 2, and three tenths of a stop more
    expect(below('<1.4 3', 1)?.metered.heads[0]?.most).toBeCloseTo(2 * 2 ** 0.3, 9);
    expect(below('none', 1)?.metered.heads[0]).toEqual({ least: 0, likely: 0, most: 0 });
  });
});

describe('readings with one head off', () => {
  // all lit f/11, without the first f/8: 128 less 64 are 64, f/8 too
  const oneOff = (first: string): string => `
Point     |Wanted|All lit|Without Key|Without Fill
Metered at|      |       |100        |100
Most      |      |       |400        |400
Least     |      |       |25         |25
Step      |      |       |0.1        |0.1
Table     |11    |11     |${first}   |8
`;
  test('are taken apart, with how far each may be off', () => {
    const { points, heads } = table(oneOff('8'));
    expect(heads.map(({ name }) => name)).toEqual(['Key', 'Fill']);
    expect(points[0]?.metered.heads[0]?.likely).toBeCloseTo(64, 6);
    // three readings of half a tenth each: more than one alone
    expect(points[0]?.plusMinus?.[0]).toBeGreaterThan(0.05);
    expect(points[0]?.plusMinus?.[0]).toBeLessThan(0.3);
  });
  test('that show too little, or contradict each other, are refused by the names of the heads', () => {
    expect(faults(oneOff('E')).join()).toContain('light cannot be taken off what was not read');
    expect(faults(oneOff('11')).join()).toContain('that of without “Key” most');
    expect(faults(oneOff('8').replace('Without Fill', 'Fill')).join()).toContain('Either all heads');
    expect(faults(oneOff('8').replace('All lit', 'Total')).join()).toMatch(
      /column “All lit”|Either all heads/,
    );
  });
});

describe('what was measured', () => {
  const measured = (...cells: readonly string[]): string =>
    ['Vessel', 'Bowl', 'Rim'].reduce(
      (text, name, i) =>
        text
          .split('\n')
          .map((line) => (line.startsWith(name) ? line.replace(/\|[^|]*$/, `|${cells[i] ?? ''}`) : line))
          .join('\n'),
      TABLE,
    );
  test('is where the next round starts, with each head off by the same share', () => {
    // foretold at the vessel: 128 + 4 of light; measured f/8, 64
    const { points, isChecked, drift } = table(measured('8', '11', '11 2'));
    expect(isChecked).toBe(true);
    const lights = points[0]?.metered.heads.map(({ likely }) => likely) ?? [];
    expect(lights[0]).toBeCloseTo((128 * 64) / 132, 9);
    expect(lights[1]).toBeCloseTo((4 * 64) / 132, 9);
    expect(drift[0]).toBeCloseTo(Math.log2(64 / 132), 9);
    expect(points[0]?.metered.check?.likely).toBeCloseTo(64, 9);
  });
  test('is asked for at every point, and is more than the ambient light', () => {
    expect(faults(measured('8', '', '11'))).toEqual([
      'Measured at “Bowl” is blank: meter it too, or clear the column.',
    ]);
    expect(faults(measured('8', '11', 'E')).join()).toContain('Measured at “Rim” shows too little light');
    const lit = measured('8', '11', '11').replace('|none   |11 ', '|f/8    |11 ');
    expect(faults(lit)).toEqual([
      'Measured at “Vessel” is no more than the ambient light there: meter both again.',
    ]);
  });
  test('a power that was set counts as the present one', () => {
    const { heads } = table(withCell('Set to', ALDER, '1/2'));
    expect(heads[0]?.head).toMatchObject({ metered: 150, power: 300 });
    expect(table(withCell('Set to', ALDER, 'off')).heads[0]?.head.power).toBe(0);
    expect(faults(without('Step')).join()).toContain('type its step');
  });
});

test('a cell of the made tables that says an error is one', () => {
  expect(isCellError(blockOf('#N/A|1').cells[0]?.[0]?.value)).toBe(true);
});
