import { expect, test } from 'vitest';
import { tailStops } from '../../src/cells/tailStops';

test.each([
  ['+0.3', 0.3],
  ['-.3', -0.3],
  ['+ 0,5', 0.5],
  ['0.', 0],
  ['+0.105', 0.105],
  ['+0.205', 0.205],
  ['-1/3', -1 / 3],
  ['1 2/3', 5 / 3],
  ['+2 1/2 stops', 2.5],
  ['5/2', 2.5],
])('%s is a tail of stops', (text, stops) => expect(tailStops(text)).toBeCloseTo(stops, 12));

test.each([
  // ten tenths, or a hundred hundredths?
  '+0.10',
  '+.10',
  '+0,10',
  '+0.100',
  // more than a whole after a whole
  '1 3/2',
  '1 2/2',
  '0 4/3',
  // three stops and more
  '3/1',
  '6/2',
  '12/4',
  '+1.3',
  '1/7',
])('%s is none', (text) => expect(tailStops(text)).toBeUndefined());
