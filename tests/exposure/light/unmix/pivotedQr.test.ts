import { describe, expect, it } from 'vitest';
import { pivotedQr } from '../../../../src/exposure/light/unmix/pivotedQr';

describe('columns', () => {
  it('count as independent by their share of the longest, whatever their unit', () => {
    for (const unit of [1e-6, 1, 1e6]) {
      expect(pivotedQr([[unit, 0], [unit, 1e-8 * unit]]).rank).toBe(2); // prettier-ignore
      expect(pivotedQr([[unit, 0], [unit, 1e-10 * unit]]).rank).toBe(1); // prettier-ignore
    }
  });

  it('that are none have no rank', () => expect(pivotedQr([])).toMatchObject({ rank: 0, order: [] }));
});
