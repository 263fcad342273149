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

  it('is refused where the text has tenths of its own', () => {
    for (const text of ['11³', 'f/11 +0.3', 'f/8 2/3', 'f/11 -1/3', '11⁰'])
      for (const tenths of [3, '3'])
        expect(answerOf('FNUMBER', text, tenths), text).toMatchObject({
          error: '#VALUE!',
          message: expect.stringContaining('has tenths of its own'),
        });
  });

  it('takes such a text where the tenths are blank, and figures of every kind beside tenths', () => {
    // 2^(7/2 + 3/20) is f/11 and three tenths.
    for (const blank of [0, null, '', undefined])
      expectNear(answerOf('FNUMBER', '11³', blank) as number, 2 ** 3.65);
    for (const text of [11, '11', 'f/11', 'ƒ/11'])
      expectNear(answerOf('FNUMBER', text, 3) as number, 2 ** 3.65);
    expectNear(answerOf('FNUMBER', '11 exact', 3) as number, 11 * 2 ** 0.15);
    expectNear(answerOf('FNUMBER', 'f/13 half', 3) as number, 2 ** (3.75 + 0.15));
  });

  it('in a column goes row by row', () => {
    const [first, second] = answerOf('FNUMBER', [['11³'], ['11³'], [11]], [[null], [3], [3]]) as unknown[][];
    expectNear(first?.[0] as number, 2 ** 3.65);
    expect(second?.[0]).toMatchObject({ error: '#VALUE!' });
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
