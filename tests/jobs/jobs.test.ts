import { describe, expect, test } from 'vitest';
import { cellError, type ErrorCode } from '../../src/formula/errors';
import { faults, reachOf } from './compare';
import { type Expected, isContains, isParts, isRefused, JOBS, rowsOf, type Step } from './job';
import { type Answer, answersOf } from './work';

/** Every job, and how many steps it has: each must be run. */
const STEPS = {
  '01-build-up': 14,
  '02-five-heads': 16,
  '03-three-points': 12,
  '04-pour': 15,
  '05-hire': 15,
  '06-stack-or-pops': 15,
  '07-copy-stand': 14,
  '08-mixed-colour': 15,
  '09-long-tail': 15,
  '10-re-light': 15,
  '11-one-circuit': 15,
  '12-estimate': 15,
};

test('all jobs of the day are here, with all their steps', () => {
  expect(Object.fromEntries([...JOBS].map(([name, job]) => [name, job.steps.length]))).toEqual(STEPS);
});

describe('a working day', () => {
  test.each(Object.entries(STEPS))('%s comes out', async (name, count) => {
    const job = JOBS.get(name);
    const answers = job ? await answersOf(job) : [];
    expect(answers.length).toBe(count);
    const wrong = job?.steps.flatMap((step, i) =>
      faults(answers[i] as Answer, step).map((fault) => `${i + 1}. ${step.asks} ${fault}`),
    );
    expect(wrong).toEqual([]);
  });
});

/** The answer that is expected to the last figure. */
function ideal(expected: Expected): Answer {
  if (isRefused(expected))
    return [[cellError(expected.error as ErrorCode, `It says: ${expected.says ?? 'no'}.`)]];
  return isContains(expected) ? [[`It says: ${expected.contains}.`]] : rowsOf(expected);
}

/** Past what a number may be off by, where that is nothing. */
const PAST = 1e-10;

/** Other expectations than that of a step, none of which its answer meets. */
function altered({ expect: wanted, within = 'exactly' }: Step): Expected[] {
  if (isRefused(wanted))
    return [
      { ...wanted, error: wanted.error === '#N/A' ? '#NUM!' : '#N/A' },
      { ...wanted, says: `${wanted.says ?? ''}, and more` },
      0,
    ];
  if (isContains(wanted)) return [{ contains: `${wanted.contains}, and more` }, 0];
  const rows = rowsOf(wanted);
  const others = rows.flatMap((row, i) =>
    row.flatMap((value, j) => {
      const another = (by: number | string) =>
        rows.map((cells, r) => cells.map((cell, c) => (r === i && c === j ? by : cell)));
      if (value === null) return [];
      if (typeof value === 'string') return [another(`${value} `), another(0)];
      const { under, over } = reachOf(value, within);
      return [
        another(value + 1.01 * under + PAST),
        another(value - 1.01 * over - PAST),
        another(String(value)),
      ];
    }),
  );
  return [...others, [...rows, ['']], { error: '#N/A' }];
}

describe('an expectation', () => {
  const all = [...JOBS].flatMap(([name, job]) =>
    job.steps.map((step, i) => ({ step, place: `${name}, ${i + 1}. ${step.asks}` })),
  );

  test('is met by what it says', () => {
    expect(all.filter(({ step }) => faults(ideal(step.expect), step).length > 0)).toEqual([]);
  });

  test('that is altered is not met', () => {
    for (const { step, place } of all)
      for (const other of altered(step))
        expect(faults(ideal(step.expect), { ...step, expect: other }), place).not.toEqual([]);
  });

  test('of a refusal is not met without a sentence, or by a cell beside it that has an answer', () => {
    const refused = { expect: { error: '#N/A' } };
    expect(faults([[cellError('#N/A')]], refused)).toEqual(['#N/A without a sentence']);
    expect(faults([[cellError('#N/A', 'No.'), 8]], refused)).toEqual(['8 instead of #N/A']);
    expect(faults([], refused)).toEqual(['no cell at all']);
  });

  test('of a number says how near it must come, and why; that of anything else has nothing to say', () => {
    for (const { step, place } of all) {
      const counted =
        isParts(step.expect) ||
        (!isRefused(step.expect) &&
          !isContains(step.expect) &&
          rowsOf(step.expect)
            .flat()
            .some((value) => typeof value === 'number'));
      expect(step.within !== undefined, place).toBe(counted);
      if (typeof step.within === 'object') expect(step.within.why, place).toMatch(/\w/);
    }
  });
});
