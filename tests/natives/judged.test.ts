import { describe, expect, test } from 'vitest';
import { findings } from './causes';
import { FAMILIES, generate } from './generate';
import { judged } from './judged';

const COUNT = 400;

describe('formulas that are drawn', () => {
  test('the same for the same seed, others for another, no two alike, of every family', () => {
    const drawn = generate(COUNT, 7);
    expect(generate(COUNT, 7)).toEqual(drawn);
    expect(generate(COUNT, 8)).not.toEqual(drawn);
    expect(new Set(drawn.map(({ formula }) => formula)).size).toBe(COUNT);
    expect(new Set(drawn.map(({ family }) => family))).toEqual(new Set(Object.keys(FAMILIES)));
  });
});

describe('what is judged', () => {
  const judge = { by: 'LibreOffice' } as const;
  const asked = [
    { family: 'numbers', formula: '=SUM(E1:E6)', judge },
    { family: 'rounding', formula: '=TRUNC(-7)', judge },
    { family: 'conditions', formula: '=COUNTIF(G1:G6,1)', judge },
    {
      family: 'printed',
      formula: '=PV(0.08/12,12*20,500,,0)',
      judge: { by: 'documentation', answer: -59777.15, digits: 2, source: 'help' } as const,
    },
  ];
  // Digits behind those that the documentation prints are none of its business.
  const right = [52.6, -7, 2, -59777.15];

  test('a difference is a fault, is known, or is none', () => {
    const { by, excused, faults } = judged(asked, [52.6, -6, 1, -59777.1458], right);
    expect(faults.map(({ formula }) => formula)).toEqual(['=TRUNC(-7)']);
    expect([...excused.values()].flat().map(({ formula }) => formula)).toEqual(['=COUNTIF(G1:G6,1)']);
    expect([...by]).toEqual([
      ['LibreOffice', 3],
      ['documentation', 1],
    ]);
  });

  test('one in a thousand million is a fault, and another kind', () => {
    expect(judged(asked, [52.6000001, -7, 2, -59777.15], right).faults).toHaveLength(1);
    expect(judged(asked, ['52.6', -7, 2, -59777.16], right).faults).toHaveLength(2);
  });

  test('a cause is told by its formulas', () => {
    const { faults } = judged(asked, [52.6, -6, 2, -59777.15], right);
    const found = findings(faults).filter(([, shows]) => shows.length > 0);
    expect(found.map(([{ id }]) => id)).toEqual(['A9']);
  });
});
