import { describe, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

// For every commit the engine has these by itself: tests/engine/functions.test.ts.
describe('mistakes', () => {
  it('in the number of arguments have a sentence', async () => {
    await sheet.enterDown('H5', [
      '=SWEEP.STOPDIFF(8)',
      '=SWEEP.STOPDIFF(8,11,"aperture",4)',
      '=SWEEP.STOPDIFF()',
    ]);
    await sheet.refuses('H5', '#VALUE!', /to/);
    await sheet.refuses('H6', '#VALUE!', /2 or 3 values, not 4/);
    await sheet.refuses('H7', '#VALUE!', /from/);
  });
});

describe('a column of readings', () => {
  it('says #SPILL! rather than overwrite', async () => {
    await sheet.enterDown('G5', ['16', '11', '8']);
    await sheet.enter('H6', 'kept');
    await sheet.enter('H5', '=SWEEP.LIGHTSHARE(G5:G7)');
    await sheet.shows('H5', '#SPILL!');
    await sheet.shows('H6', 'kept');
  });
});
