import { expect, it } from 'vitest';
import { cutBeside, freeBeside } from '../../../src/hosts/workbench/print/freeBeside';

const CELL = { left: 100, right: 200 };

it('leaves words the room up to the nearest cells that show something', () => {
  const row = [
    { left: 0, right: 40 },
    { left: 50, right: 70 },
    CELL,
    { left: 260, right: 300 },
    { left: 400, right: 500 },
  ];
  expect(freeBeside(CELL, row)).toEqual({ before: 30, after: 60 });
  expect(cutBeside(CELL, row)).toBe('inset(-100000px -60px -100000px -30px)');
  expect(freeBeside(CELL, [{ left: 200, right: 300 }])).toEqual({ before: Infinity, after: 0 });
  expect(freeBeside(CELL, [])).toEqual({ before: Infinity, after: Infinity });
});
