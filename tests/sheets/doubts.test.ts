import { expect, test } from 'vitest';
import type { Place } from '../../src/formula/address';
import { blockPlace, layout, tableTop } from '../../src/sheets/layout';
import type { Template, TemplateTable } from '../../src/sheets/template';
import { drawn } from '../full';
import { templateOf } from './support';
import type { Slip } from './tired/mishaps';
import { opened } from './tired/opened';

/** Sheets whose forms take a reading, and the cells of it. */
const READINGS: readonly (readonly [id: string, reading: string, tenths: string])[] = [
  ['pops-build', 'reading', 'readingTenths'],
  ['pops-build', 'ambient', 'ambientTenths'],
  ['depth-options', 'reading', 'readingTenths'],
  ['pops-plan', 'ambient', 'ambientTenths'],
];

/**
 * What a meter shows as 22 with a small 6, typed with a point, is no f/22 and six tenths. Full stops are 2^(n/2): f/22 is 22.627,
 * f/16 is 16, f/11 is 11.3137, f/4 is 4.
 */
const DOUBTED: readonly (readonly [typed: number | string, tenths: number, readAs: string, sum: string])[] = [
  [22.6, 0, 'f/22', '2 log2(22.6/22.627) = −0.003'],
  [16.5, 0, 'f/16 +0.1', '2 log2(16.5/16) = 0.089'],
  ['16,5', 0, 'f/16 +0.1', 'the same with a comma'],
  ['f/16.5', 0, 'f/16 +0.1', 'the same with its sign'],
  [11.9, 0, 'f/11 +0.1', '2 log2(11.9/11.3137) = 0.146'],
  [16.5, 3, 'f/16 +0.4', 'and three tenths beside it: 0.389'],
];
/** f/22 and six tenths, 2^4.8, as another sheet hands it on. */
const WORKED_OUT = 27.857618025475972;
/** Marks of a lens in thirds and halves, tenths in their own notation, what is exact, and a reading that was worked out. */
const SURE: readonly (readonly [typed: number | string, tenths: number])[] = [
  ...[5.6, 3.5, 6.3, 7.1, 2.8, 1.4, 4.5, 6.7, 9.5, 16, '5,6'].map((typed) => [typed, 0] as const),
  ...['f/16+0.5', '16⁵', 'f/8 2/3', '22.6 exact'].map((typed) => [typed, 0] as const),
  [WORKED_OUT, 0],
  [22, 6],
];

/** For every commit some of each, typed into one form and one table. */
const [DOUBTS, CERTAIN] = [drawn(DOUBTED), drawn(SURE)];

/** What a cell says after each pair of a reading and its tenths was typed. */
async function said(
  template: Template,
  [reading, tenths, words]: readonly [reading: Place, tenths: Place, words: Place],
  pairs: readonly (readonly [Slip, Slip, ...unknown[]])[],
): Promise<string[]> {
  const sheet = await opened(template);
  const all: string[] = [];
  for (const [figure, small] of pairs) {
    const typed = new Map([[reading, figure] as const, [tenths, small] as const]);
    all.push(String((await sheet.after(typed))(words) ?? ''));
  }
  sheet.dispose();
  return all;
}

test.each(drawn(READINGS))(
  '%s: tenths in the cell of its %s are said beside it',
  async (id, reading, tenths) => {
    const template = templateOf(id);
    const { cells } = layout(template);
    const place = cells.get(reading)?.place as Place;
    const small = cells.get(tenths)?.place as Place;
    const words = { row: place.row, column: place.column + 2 };
    const all = await said(template, [place, small, words], [...DOUBTS, ...CERTAIN]);
    expect(all.slice(0, DOUBTS.length)).toEqual(
      DOUBTS.map(([, , readAs]) => `! read as ${readAs}: tenths go beside it`),
    );
    for (const [i, sure] of CERTAIN.entries()) expect(all[DOUBTS.length + i], String(sure)).not.toMatch(/^!/);
  },
);

/** Tables that take readings: what the row says where it refuses one. */
const ROWS: readonly (readonly [id: string, table: string, says: string, refusal: string])[] = [
  ['lights-on-set', 'Lights', 'Wrong', 'type its reading: the full stop, the small figure under Tenths'],
  ['pops-plan', 'Plan', 'Wrong', 'type its reading: the full stop, the small figure under Tenths'],
  ['freeze-check', 'FreezeHeads', 'What to do', 'its reading: full stop, then tenths beside it'],
];

test.each(drawn(ROWS))(
  '%s: tenths in the cell of the full stop are refused in the row',
  async (id, name, says, refusal) => {
    const template = templateOf(id);
    const table = template.blocks.find(
      (block): block is TemplateTable => block.kind === 'table' && block.id === name,
    ) as TemplateTable;
    const of = (column: string): Place => ({
      row: tableTop(table) + 1,
      column: blockPlace(table).column + table.columns.findIndex((each) => each.id === column),
    });
    // A table holds what a meter showed: a number that another sheet worked out is refused as well.
    const sure = CERTAIN.filter(([typed]) => typed !== WORKED_OUT);
    const all = await said(template, [of('Reading'), of('Tenths'), of(says)], [...DOUBTS, ...sure]);
    expect(all.slice(0, DOUBTS.length)).toEqual(DOUBTS.map(() => refusal));
    for (const [i, each] of sure.entries())
      expect(all[DOUBTS.length + i], String(each)).not.toMatch(/reading/);
  },
);
