import { describe, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;

describe('formulas that go round in a circle', () => {
  allInOneWorkbook((found) => {
    sheet = found;
  });

  it('are refused in a sentence, and answered once the circle is cut', async () => {
    await sheet.enterDown('H9', ['=H10+1', '=H9+1', '=ROW(H11)']);
    await sheet.refuses('H10', '#REF!', /goes round in a circle/);
    await sheet.shows('H9', '#REF!');
    await sheet.shows('H11', 11);
    await sheet.enter('H9', '4');
    await sheet.shows('H10', 5);
  });
});
