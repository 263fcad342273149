import { expect, test } from 'vitest';
import type { EngineValue } from '../../src/engine/headless';
import { layout } from '../../src/sheets/layout';
import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
import { templateOf, typedOver } from '../sheets/support';
import { together } from '../sheets/together';

/**
 * The five heads of `02-five-heads.json` as a person lights them: what they can do is typed once into Heads, what each reads into Pops
 * plan, each on its own scale, and the card is taken to the set. The sums are those of the job; the powers on the dials follow
 * from them: Birch shows 10 at its 1200 Ws, Alder fractions of its 600, Hazel percent of its 400.
 */
const heads = templateOf('heads');
/** Least power and recycle at full power, as the job has them, by name. */
const OWNED: Readonly<Record<string, readonly [least: number, recycle: number]>> = {
  'Alder 600': [9.375, 0.9],
  'Birch 1200': [18.75, 1.6],
  'Cedar 2400': [37.5, 2.8],
  'Hazel 400': [400, 3.5],
};
function ownedRows(): TemplateValue[][] {
  const { columns, rows } = layout(heads).tables.get('Models') as TemplateTable;
  const given = columns.filter(({ formula }) => formula === undefined).map(({ id }) => id);
  return rows.map((row) => {
    const [least, recycle] = OWNED[String(row[0])] ?? [null, null];
    // a head of one power is short at that alone
    const isFixed = row[given.indexOf('Most')] === least;
    return row.map((value, i) => {
      const id = given[i] ?? '';
      if (id === 'Least') return least;
      if (id === 'Recycle') return recycle;
      return id === 'Recycle least' || (isFixed && /^(?:Energy|Flash) [2-6]$/.test(id)) ? null : value;
    });
  });
}

type Lit = readonly [string, string, power: string, reading: number, tenths: number, wanted: string | number];
const LIT: readonly Lit[] = [
  ['Cedar 2400', 'key', '2400', 11, 0, 0],
  ['Birch 1200', 'fill', '9', 5.6, 9, '-4/3'],
  ['Alder 600', 'rim', '1/4', 5.6, 0, -2],
  ['Alder 600', 'accent', '1/2', 8, 2, '-5/3'],
  ['Hazel 400', 'background', '100%', 8, 3, -3],
];

test('five heads from Heads to the card, as worked by hand', async () => {
  const camera = { aperture: 45, focal: 120, draw: 150, filter: '1/3', gap: null, ambient: null, ambientTenths: 0, ambientTime: null }; // prettier-ignore
  const lit = LIT.map(([head, part, power, reading, tenths, wanted]) => [
    head,
    part,
    power,
    reading,
    tenths,
    'yes',
    wanted,
    ...Array.from({ length: 12 }, () => null),
  ]);
  const plan = typedOver(templateOf('pops-plan'), camera, { Plan: lit });
  const card = templateOf('set-card');
  const book = await together(
    [typedOver(heads, {}, { Models: ownedRows() }), plan, card].map((template) => ({ template })),
  );
  expect(book.errors()).toEqual([]);
  const five = (table: string, column: string): EngineValue[] => book.column(table, column).slice(0, 5);
  expect(five('Dial', 'Note').join('|')).not.toMatch(/Heads|type/);

  // 15 pops, the Hazel off after 3. Fill: 12 tenths below its 10; rim: 20 tenths below full, a quarter; top: 19, 9 below a half.
  expect(five('Card', 'Pops')).toEqual([15, 15, 15, 15, 3]);
  expect(five('Card', 'Set to')).toEqual(['2400 Ws', '8.8', '1/4', '1/2 −0.9', '100 %']);
  // 600 to 522.33 Ws is two tenths; 300 to 160.77 nine
  expect(five('Dial', 'Turn by')).toEqual(['0', '−0.2', '0', '−0.9', '0']);
  const order = ['Fire', 'Which'].map((name) => book.column('Order', name).slice(0, 2));
  expect(order).toEqual([['pops 1–3', 'pops 4–15'], ['all lights; then switch off background: Hazel 400', 'the others']]); // prettier-ignore
  // 3 × 3.5 + 11 × 2.8 s open, one more 2.8 s until all are ready
  const planned = book.form(1, plan);
  expect(planned.cell('pops')).toBe(15);
  expect(planned.cell('open')).toBeCloseTo(41.3, 9);
  expect(planned.cell('ready')).toBeCloseTo(44.1, 9);
  // √(31.22978² + 19.90212² + 15.61489² + 17.32581² + 10.9578²) = 45.11624: less than a hundredth of a stop from f/45
  expect(planned.cell('together')).toBe('f/45');

  const shown = book.form(2, card);
  expect(['lensSetting', 'pops'].map(shown.cell).map(String)).toEqual([expect.stringContaining('45'), expect.stringContaining('15')]); // prettier-ignore
  book.dispose();
});
