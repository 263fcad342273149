import { expect, test } from 'vitest';
import { fitted } from '../../../src/hosts/workbench/cell/fitted';

/** Every sign one wide. */
const letters = (text: string): number => text.length;

test.each([
  ['123456789123', 12, '123456789123'],
  ['123456789123', 9, '#########'],
  ['-123456789123', 9, '#########'],
  ['0.3333333333333333', 8, '0.333333'],
  ['0.6666666666666666', 8, '0.666667'],
  ['99.96', 4, '100'],
  ['-2.5678', 5, '-2.57'],
  ['1234.5678', 4, '1235'],
  ['1234.5678', 3, '###'],
  ['1.005', 4, '1.01'],
  ['-1.005', 5, '-1.01'],
  // 0.00 would say that there is nothing
  ['0.0012', 4, '####'],
  ['0.0012', 5, '0.001'],
  ['1.23456 stop', 6, '######'],
  ['1,234.50', 6, '######'],
  ['Wednesday, 15 March 2023', 10, '##########'],
  ['1E+300', 4, '####'],
  ['5', 0, '#'],
])('%s in %i signs shows %s', (text, width, shown) => expect(fitted(text, width, letters)).toBe(shown));
