import { expect, it } from 'vitest';
import { traceTable } from '../../../src/exposure/trace/traceTable';
import { traceTime } from '../../../src/exposure/trace/traceTime';
import { expectNear, value } from '../support';
import { exactly, record, twoTimes } from './shapes';

it('a million samples are read in one call', () => {
  const flash = twoTimes(50e-6, 400e-6);
  const { times, values } = record(flash, { decays: 40, samples: 1_000_000, lead: 0.1 });
  expectNear(value(traceTime(times, values, 0.1)), exactly(flash, 0.1).width, 1e-7);
  expect(value(traceTable([...times], [...values])).length).toBe(9);
});
