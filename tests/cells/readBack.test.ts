import { describe, expect, test } from 'vitest';
import { rowOf } from '../../src/catalogue';
import type { AnyRow } from '../../src/catalogue/types';
import { call } from '../../src/cells/call';

/** What a function writes is typed into other cells, and means the same there. */
const answer = (id: string, ...cells: unknown[]): unknown => call(rowOf(id) as AnyRow, cells);
const range = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);

describe('every text that a function writes is read back', () => {
  test.each([
    ['aperture', 2, 1],
    ['time', 1, 1],
    ['iso', 1, 100],
  ] as const)(
    'STOPTEXT of the scale %s, in tenths from ten stops below to seven above',
    (scale, perStop, origin) => {
      for (const tenths of range(scale === 'time' ? -100 : -20, scale === 'time' ? 40 : 70)) {
        const value = origin * 2 ** (tenths / 10 / perStop);
        const text = answer('STOPTEXT', `${value} exact`, scale);
        expect(answer('STOPDIFF', text, `${value} exact`, scale), String(text)).toBeCloseTo(0, 9);
      }
    },
  );
  test('DIALCHANGE, as stops', () => {
    for (const step of ['0.1', '1/3', '1/2'])
      for (const stops of range(-12, 12)) {
        const size = step === '0.1' ? stops / 10 : step === '1/3' ? stops / 3 : stops / 2;
        const text = answer('DIALCHANGE', 400, 400 * 2 ** size, step);
        // so many stops more than 400 Ws
        expect(answer('STOPSHIFT', 400, text, 'energy'), String(text)).toBeCloseTo(400 * 2 ** size, 6);
      }
  });
  test('HEADSETTING, by HEADPOWER', () => {
    for (const scale of ['energy', 'stops', 'fraction', 'percent'])
      for (const k of range(0, 60)) {
        const power = 1200 * 2 ** (-k / 10);
        const text = answer('HEADSETTING', power, 1200, scale, scale === 'stops' ? 10 : null, 0.1);
        const back = answer('HEADPOWER', text, 1200, scale, scale === 'stops' ? 10 : null, 0.1);
        expect(Math.log2((back as number) / power), `${scale}: ${text}`).toBeCloseTo(0, 9);
      }
  });
});
