import { it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

/** That the mends of plain formulas reach the thread that calculates; tests/engine/mends tries each of them. */
let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
});

it('plain formulas are right in the page too, as they are typed and after a change', async () => {
  await sheet.enterDown('H5', ['5', '=H5>4.0', '=(H5=5)&(H5="")', '=1.1^2=1.21', '=TRUNC(-7)']);
  await sheet.shows('H6', 1);
  await sheet.shows('H7', 'TRUEFALSE');
  await sheet.shows('H8', 1);
  await sheet.shows('H9', -7);
  await sheet.enterDown('H12', [
    'abc',
    'a*',
    '=MATCH("~*",H12:H13,0)',
    '=XMATCH("a*",H12:H13)',
    '=TEXT(1.005,"0.00")',
  ]);
  await sheet.shows('H14', '#N/A');
  await sheet.shows('H15', 2);
  await sheet.shows('H16', '1.01');
  await sheet.enter('H5', '3');
  await sheet.shows('H6', 0);
  await sheet.shows('H7', 'FALSEFALSE');
});
