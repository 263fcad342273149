import { describe, expect, it } from 'vitest';
import { asGiven } from '../../../src/exposure/stops/asGiven';
import { withTenths } from '../../../src/exposure/stops/withTenths';
import { answerOf, expectNear, itKeepsItsRanges, value } from '../support';

describe('an aperture with tenths', () => {
  it('is one stop higher after ten of them: five twice', () => {
    expectNear(value(withTenths(value(withTenths(8, 5)), 5)), 8 * Math.SQRT2);
  });

  it('rises with each tenth by the same factor, the twentieth root of 2', () => {
    for (let n = 1; n < 10; n++)
      expectNear(value(withTenths(8, n)) / value(withTenths(8, n - 1)), 1.0352649238413776);
  });

  it('without tenths is the aperture', () => {
    expect(withTenths(8)).toBe(8);
  });

  it('says that ten tenths are the next full stop', () => {
    expect(answerOf('FNUMBER', 8, 10)).toMatchObject({ message: expect.stringContaining('next full stop') });
  });

  itKeepsItsRanges('FNUMBER', { text: [8, 'above 0'], tenths: [3, 'tenths'] });
});

describe('a value that only had to be read', () => {
  it('passes as it is', () => {
    expect(asGiven(0.004)).toBe(0.004);
  });

  for (const id of ['METRES', 'SECONDS'])
    describe(id, () => itKeepsItsRanges(id, { text: [0.004, 'above 0'] }));
});
