import { it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { lines } from './tableRows';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  // the list of values stands below the answers, and a click knows of no scrolling
  { height: 1750 },
);

/** The verdict, and what stands beside it. */
const answers = async (verdict: string, beside: string): Promise<void> => {
  await sheet.shows('B17', verdict);
  await sheet.shows('D17', beside);
};

it('refuses in Copy evenness what cannot be right, at its place, as it is typed and pasted', async () => {
  await sheet.insert('Copy evenness');
  await answers('beyond', '! darkest 0.09 stop below brightest');
  await sheet.enter('G42', '512 W');
  await sheet.shows('K42', 'across 2: not a number');
  await answers('', '! a line of the list is not right: see there');
  // a date becomes a number of some 46,000, beyond what 14 bits hold
  for (const typed of ['16383', '2026-11-29']) {
    await sheet.enter('G42', typed);
    await sheet.shows('K42', 'across 2: clipped');
    await answers('', '! a value is clipped: see the list, expose less and begin again');
  }
  await sheet.enter('G42', '12280');
  await answers('beyond', '! darkest 0.09 stop below brightest');

  await sheet.enter('B5', 'lux');
  await sheet.shows('D7', '! raw only: clear it');
  await answers('', '! a cell above is not right');
  await sheet.enter('B5', 'gamma-coded');
  await answers('', '! the scale: coded values are no light');
  await sheet.enter('B5', 'EV');
  await sheet.told('What the values count: f-number, lux, raw or gamma-coded.');
  await sheet.shows('B5', 'gamma-coded');
  await sheet.enter('B5', 'raw');
  await sheet.shows('B17', 'beyond');

  await sheet.paste('E48', lines([[6, 12122, 12098, 11982, 11847, 11629]]));
  await sheet.shows('K48', 'which row? 1 to 5');
  await sheet.undo('A3');
  await sheet.shows('B17', 'beyond');
});

it('takes three by three, and says what four by four lacks', async () => {
  await sheet.insert('Copy evenness', { filled: false });
  await answers('', '! no values yet');
  await sheet.enterDown('B9', ['1', '0', 'FADGI 1 star']);
  await sheet.enter('B5', 'lux');
  // the grid of the copy job: 100 × (1250 − 1180)/1250 = 5.6 %, within 8 %
  await sheet.paste('E38', lines([[1, 1210, 1235, 1250], [2, 1195, 1230, 1245], [3, 1180, 1215, 1225]])); // prettier-ignore
  await answers('within', 'the limit');
  await sheet.showsNear('B18', 5.6);
  await sheet.paste('E41', lines([[4, 1210, 1235, 1250]]));
  await answers('', '! 4 rows of 3: lay 3 by 3 or 5 by 5 places');
  await sheet.paste('I38', lines([[1000], [1000], [1000], [1000]]));
  await answers('', '! 4 rows of 4: lay 3 by 3 or 5 by 5 places');
});
