import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawn, trials } from '../full';
import { CATALOGUE, rowOf } from '../../src/catalogue';
import { type AnyRow, type Arg, isChoice, isTruth, quantitiesOf } from '../../src/catalogue/types';
import { type Answer, type AnswerCell, call } from '../../src/cells/call';
import { cellError, isCellError } from '../../src/formula/errors';
import { expectNear } from './support';

const run = (id: string, ...cells: readonly unknown[]): Answer => call(rowOf(id) as AnyRow, cells);
const number = (id: string, ...cells: readonly unknown[]): number => {
  const came = run(id, ...cells);
  if (typeof came !== 'number') throw new Error(`${id}(${JSON.stringify(cells)}): ${JSON.stringify(came)}`);
  return came;
};

const RUNS = trials(7, 200);
/** Figures as people type them: marks as well as any number between. */
const aperture = fc.oneof(
  fc.constantFrom(1, 1.4, 2.8, 5.6, 8, 9.5, 11, 13, 16, 22, 45, 'f/8 2/3', 'f/11+0.3', '16³'),
  fc.double({ min: 0.7, max: 120, noNaN: true }),
);
const exactly = (n: number): string => `${n} exact`;
const exactAperture = fc.double({ min: 0.7, max: 120, noNaN: true });
/** For each scale, figures that its cells take. */
const VALUES = {
  aperture,
  time: fc.oneof(
    fc.constantFrom('1/125', '1/60', '1/4 s', 2, '30"'),
    fc.double({ min: 1e-5, max: 900, noNaN: true }),
  ),
  iso: fc.oneof(fc.constantFrom(100, 125, 'ISO 64', 400), fc.double({ min: 3, max: 99_000, noNaN: true })),
  energy: fc.oneof(fc.constantFrom(400, '1.2 kJ', '75 Ws'), fc.double({ min: 1, max: 5000, noNaN: true })),
  factor: fc.oneof(
    fc.constantFrom('3:1', '1/4', '30%', 8),
    fc.double({ min: 0.001, max: 1000, noNaN: true }),
  ),
} as const;

describe('STOPSHIFT undoes STOPDIFF', () => {
  it.each(Object.entries(VALUES))('on the scale %s', (scale, values) => {
    fc.assert(
      fc.property(
        values as fc.Arbitrary<number | string>,
        values as fc.Arbitrary<number | string>,
        (a, b) => {
          const stops = number('STOPDIFF', a, b, scale);
          // The way back, from the shifted value to b, is no stops at all.
          expect(number('STOPDIFF', number('STOPSHIFT', a, stops, scale), b, scale)).toBeCloseTo(0, 10);
          expect(number('STOPDIFF', b, a, scale)).toBeCloseTo(-stops, 11);
        },
      ),
      RUNS,
    );
  });
});

describe('light', () => {
  const lights = fc.array(aperture, { minLength: 2, maxLength: 7 });
  const exactLights = fc.array(exactAperture, { minLength: 2, maxLength: 7 });

  it('adds up in any order', () => {
    fc.assert(
      fc.property(lights, fc.nat(), (list, turn) => {
        const k = turn % list.length;
        const turned = [...list.slice(k), ...list.slice(0, k)].reverse();
        expectNear(number('LIGHTSUM', ...turned), number('LIGHTSUM', ...list));
      }),
      RUNS,
    );
  });

  it('adds up in any grouping, and whether it stands in cells or in a range', () => {
    fc.assert(
      fc.property(exactLights, fc.nat(), (list, cut) => {
        const cells = list.map(exactly);
        const all = number('LIGHTSUM', ...cells);
        const k = 1 + (cut % (list.length - 1));
        const [left, right] = [
          number('LIGHTSUM', ...cells.slice(0, k)),
          number('LIGHTSUM', ...cells.slice(k)),
        ];
        expectNear(number('LIGHTSUM', exactly(left), exactly(right)), all);
        expectNear(
          number(
            'LIGHTSUM',
            cells.map((c) => [c]),
          ),
          all,
        );
        expectNear(number('LIGHTSUM', [cells]), all);
        expectNear(
          number(
            'LIGHTSUM',
            cells[0],
            cells.slice(1).map((c) => [c]),
          ),
          all,
        );
      }),
      RUNS,
    );
  });

  it('taken away again leaves what it was added to', () => {
    fc.assert(
      fc.property(exactAperture, exactAperture, (a, b) => {
        fc.pre(a > b / 30);
        const both = number('LIGHTSUM', exactly(a), exactly(b));
        expectNear(number('LIGHTMINUS', exactly(both), exactly(b)), a, 1e-11);
      }),
      RUNS,
    );
  });

  it('has the same shares, ratio and spread when every reading is k times as high, and k times the sum and mean', () => {
    fc.assert(
      fc.property(exactLights, fc.double({ min: 0.1, max: 10, noNaN: true }), (list, k) => {
        const cells = list.map((n) => [exactly(n)]);
        const higher = list.map((n) => [exactly(n * k)]);
        const shares = run('LIGHTSHARE', cells) as number[][];
        const same = run('LIGHTSHARE', higher) as number[][];
        shares.forEach((row, i) => expectNear(same[i]?.[0] as number, row[0] as number));
        expectNear(
          number('LIGHTRATIO', ...higher.flat().slice(0, 2)),
          number('LIGHTRATIO', ...cells.flat().slice(0, 2)),
        );
        for (const id of ['LIGHTSPREAD', 'LIGHTREPEAT', 'LIGHTEVENNESS'])
          expect(number(id, higher)).toBeCloseTo(number(id, cells), 10);
        for (const id of ['LIGHTSUM', 'LIGHTMEAN']) expectNear(number(id, higher), k * number(id, cells));
      }),
      RUNS,
    );
  });

  it('needs the same pops, power, distance and open time when reading and target are k times as high', () => {
    fc.assert(
      fc.property(exactAperture, exactAperture, fc.double({ min: 0.1, max: 10, noNaN: true }), (n, t, k) => {
        const plain = [exactly(n), exactly(t)];
        const higher = [exactly(n * k), exactly(t * k)];
        expect(number('POPSMISS', ...higher, 4)).toBeCloseTo(number('POPSMISS', ...plain, 4), 10);
        expectNear(number('POWERFORREADING', 100, ...higher), number('POWERFORREADING', 100, ...plain));
        expectNear(number('DISTANCEFORREADING', 2, ...higher), number('DISTANCEFORREADING', 2, ...plain));
        expectNear(number('CREEPTIME', ...higher, '1/60'), number('CREEPTIME', ...plain, '1/60'));
      }),
      RUNS,
    );
  });
});

describe('more pops', () => {
  const pops = fc.integer({ min: 1, max: 98 });
  it('never lower a reading, of one head, of several, or after a change of power', () => {
    fc.assert(
      fc.property(
        aperture,
        aperture,
        pops,
        pops,
        fc.double({ min: -3, max: 6, noNaN: true }),
        (a, b, n, m, loss) => {
          expect(number('POPSREADING', a, n + 1, loss)).toBeGreaterThan(number('POPSREADING', a, n, loss));
          expect(number('POPSBUILD', [[a], [b]], [[n + 1], [m]])).toBeGreaterThanOrEqual(
            number('POPSBUILD', [[a], [b]], [[n], [m]]),
          );
          expect(number('READINGFORPOWER', a, 100, 50, null, null, 0, n + 1)).toBeGreaterThan(
            number('READINGFORPOWER', a, 100, 50, null, null, 0, n),
          );
          expect(number('POPSMISS', a, b, n + 1, loss)).toBeGreaterThan(number('POPSMISS', a, b, n, loss));
          expect(number('POPSTIME', n + 1, 2)).toBeGreaterThan(number('POPSTIME', n, 2));
        },
      ),
      RUNS,
    );
  });
});

describe('every text that STOPTEXT writes', () => {
  const ends = {
    aperture: [0.7, 128],
    time: [2 ** -15, 2 ** 5],
    iso: [3.125, 102_400],
  } as const;
  const perStop = { tenth: 10, third: 3, half: 2, full: 1 } as const;
  const origin = { aperture: 1, time: 1, iso: 100 } as const;
  const cases = (['aperture', 'time', 'iso'] as const).flatMap((scale) =>
    (['tenth', 'third', 'half', 'full'] as const).map((division) => ({ scale, division })),
  );

  it.each(cases)('of $scale by $division reads back to the value, rounded', ({ scale, division }) => {
    const [low, high] = ends[scale];
    const steps = 2000;
    let written = 0;
    for (let i = 0; i <= steps; i++) {
      const exact = low * (high / low) ** (i / steps);
      const text = run('STOPTEXT', exact, scale, division);
      // Half stops of times and speeds are marked over a shorter range: outside it there is no text to read.
      if (typeof text !== 'string') {
        expect(text).toMatchObject({ error: '#N/A' });
        continue;
      }
      written++;
      const off = number('STOPDIFF', exact, text, scale);
      expect(Math.abs(off), text).toBeLessThanOrEqual(0.5 / perStop[division] + 1e-9);
      const fromOrigin = number('STOPDIFF', origin[scale], text, scale) * perStop[division];
      expect(Math.abs(fromOrigin - Math.round(fromOrigin)), text).toBeLessThan(1e-9);
      expect(run('STOPTEXT', text, scale, division)).toBe(text);
    }
    expect(written).toBeGreaterThan(steps / 2);
  });
});

/** Cells to try for an argument: as in the example, other forms that it reads, numbers around, a wrong text, an error. */
function tries(arg: Arg, example: unknown): readonly unknown[] {
  if (isChoice(arg.kind)) return [...arg.kind.choices, 'nonsense'];
  if (isTruth(arg.kind)) return [true, false, 'nonsense'];
  const forms = quantitiesOf(arg.kind).flatMap((q) => q.forms.slice(0, 2));
  const numbers = typeof example === 'number' ? [example, example * 1.25, example + 1] : [example ?? 1, 2];
  return [...numbers, ...forms, -3, 'nonsense', cellError('#DIV/0!')];
}
const alone = (row: AnyRow, cells: readonly unknown[], changes: ReadonlyMap<number, unknown>): AnswerCell => {
  const length = Math.max(cells.length, ...[...changes.keys()].map((i) => i + 1));
  return call(
    row,
    Array.from({ length }, (_, i) => (changes.has(i) ? changes.get(i) : cells[i])),
  ) as AnswerCell;
};
const withCell = (cells: readonly unknown[], index: number, cell: unknown): unknown[] =>
  Array.from({ length: Math.max(cells.length, index + 1) }, (_, i) => (i === index ? cell : cells[i]));

const spreadable = CATALOGUE.flatMap((row) =>
  row.answers !== 'one'
    ? []
    : row.examples.map((example, n) => ({
        row,
        id: row.id,
        example: n + 1,
        cells: example.cells as readonly unknown[],
      })),
);
const singles = (row: AnyRow): readonly (readonly [number, Arg])[] =>
  [...(row.args as readonly Arg[]).entries()].filter(([, arg]) => arg.takes === 'one');

const withSingles = (least: number) => spreadable.filter(({ row }) => singles(row).length >= least);

describe('a range for an argument of one cell', () => {
  it.each(drawn(withSingles(1), 3))(
    'of $id (example $example) gives what single calls give, down and across',
    ({ row, cells }) => {
      for (const [index, arg] of singles(row)) {
        const list = tries(arg, cells[index]);
        const single = list.map((cell) => alone(row, cells, new Map([[index, cell]])));
        expect(
          call(
            row,
            withCell(
              cells,
              index,
              list.map((c) => [c]),
            ),
          ),
          arg.name,
        ).toEqual(single.map((s) => [s]));
        expect(call(row, withCell(cells, index, [list])), arg.name).toEqual([single]);
      }
    },
  );

  it.each(drawn(withSingles(2), 3))(
    'of $id (example $example): a column against a row gives every pair',
    ({ row, cells }) => {
      const all = singles(row);
      for (const [i, first] of all)
        for (const [k, second] of all) {
          if (i === k) continue;
          const down = tries(first, cells[i]);
          const across = tries(second, cells[k]);
          const grid = call(
            row,
            withCell(
              withCell(
                cells,
                i,
                down.map((c) => [c]),
              ),
              k,
              [across],
            ),
          );
          const single = down.map((a) =>
            across.map((b) =>
              alone(
                row,
                cells,
                new Map([
                  [i, a],
                  [k, b],
                ]),
              ),
            ),
          );
          // Where both cells are wrong, either may be the one that is named.
          const wrong = (index: number, cell: unknown): boolean =>
            isCellError(alone(row, cells, new Map([[index, cell]])));
          const either = down.map((a) => across.map((b) => wrong(i, a) && wrong(k, b)));
          const named = (rows: readonly (readonly AnswerCell[])[]): unknown =>
            rows.map((r, y) =>
              r.map((cell, x) => (either[y]?.[x] === true && isCellError(cell) ? 'refused' : cell)),
            );
          expect(named(grid as AnswerCell[][]), `${first.name} by ${second.name}`).toEqual(named(single));
        }
    },
  );

  it.each(drawn(withSingles(1), 3))(
    'of $id (example $example): a blank row of a needed argument is an empty text',
    ({ row, cells }) => {
      for (const [index, arg] of singles(row)) {
        const column = call(row, withCell(cells, index, [[cells[index]], [null], ['']]));
        const blank = arg.optional ? alone(row, cells, new Map([[index, null]])) : '';
        const needed = alone(row, cells, new Map([[index, null]]));
        const zero = typeof needed === 'number';
        expect(column, arg.name).toEqual([
          [alone(row, cells, new Map([[index, cells[index]]]))],
          [zero ? needed : blank],
          [zero ? needed : blank],
        ]);
      }
    },
  );

  it.each(drawn(withSingles(2), 3))(
    'of $id (example $example): ranges of different length leave #N/A where one has no cell',
    ({ row, cells }) => {
      const [i = NaN, k = NaN] = singles(row).map(([index]) => index);
      const good = (index: number): unknown => cells[index] ?? null;
      const column = withCell(withCell(cells, i, [[good(i)], [good(i)], [good(i)]]), k, [
        [good(k)],
        [good(k)],
      ]);
      const came = call(row, column) as AnswerCell[][];
      const single = call(row, cells) as AnswerCell;
      expect(came.slice(0, 2)).toEqual([[single], [single]]);
      expect(came[2]?.[0]).toMatchObject({ error: '#N/A' });
    },
  );
});

describe('a function that answers with a list', () => {
  const lists = CATALOGUE.filter((row) => row.answers === 'list' && singles(row).length > 0);
  it.each(lists.map((row) => ({ row, id: row.id })))(
    '$id refuses a range where it takes one cell',
    ({ row }) => {
      const cells = row.examples[0]?.cells as readonly unknown[];
      for (const [index, arg] of singles(row)) {
        const came = call(row, withCell(cells, index, [[cells[index]], [cells[index]]]));
        expect(came).toMatchObject({ error: '#VALUE!' });
        expect((came as { message: string }).message).toContain(arg.name);
      }
    },
  );
});

describe('a function that answers side by side', () => {
  const wide = CATALOGUE.filter((row) => Array.isArray(row.answers));
  it('is there to be tried', () => expect(wide.length).toBeGreaterThan(0));
  it.each(wide.map((row) => ({ row, id: row.id })))(
    '$id gives a row of cells for each row of a column',
    ({ row }) => {
      const cells = row.examples[0]?.cells as readonly unknown[];
      const single = call(row, cells) as AnswerCell[][];
      expect(single).toHaveLength(1);
      expect(single[0]).toHaveLength((row.answers as readonly string[]).length);
      const column = withCell(cells, 0, [[cells[0]], [null], ['odd'], [cells[0]]]);
      const came = call(row, column) as AnswerCell[][];
      expect(came[0]).toEqual(single[0]);
      expect(came[3]).toEqual(single[0]);
      expect(came[1]).toEqual(single[0]?.map(() => ''));
      expect(came[2]?.every(isCellError)).toBe(true);
    },
  );
  it.each(wide.map((row) => ({ row, id: row.id })))(
    '$id refuses a row of values, as there is no room for it',
    ({ row }) => {
      const cells = row.examples[0]?.cells as readonly unknown[];
      expect(call(row, withCell(cells, 0, [[cells[0], cells[0]]]))).toMatchObject({ error: '#VALUE!' });
    },
  );
});
