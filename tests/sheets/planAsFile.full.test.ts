import { expect, test } from 'vitest';
import { usedArea } from '../../src/book/cells';
import { address } from '../../src/formula/address';
import { isCellError } from '../../src/formula/errors';
import { readXlsx } from '../../src/xlsx/read';
import { writeXlsx } from '../../src/xlsx/write';
import type { EngineValue } from '../../src/engine/headless';
import { openedBook } from './openedBook';
import { templateOf } from './support';
import { together } from './together';

const PLAN = templateOf('pops-plan');
/** As a person sees it: an empty text is an empty cell. */
const shown = (value: EngineValue): EngineValue => (isCellError(value) ? value.error : (value ?? ''));

test('a head of one power, one out of reach and another target, undone, kept in a file and opened again', async () => {
  const book = await together(['heads', 'pops-plan', 'set-card'].map((id) => ({ template: templateOf(id) })));
  const form = book.form(1, PLAN);
  const notes = () => book.column('Dial', 'Note').slice(0, 5);
  const said = () => [
    form.cell('pops'),
    form.cell('together'),
    notes(),
    book.column('Card', 'Set to'),
    book.column('Order', 'Which'),
  ];
  const demo = said();

  // Cedar 2400, the background's, gives its full power alone, as with a dial that is broken: it stays there, and that is said
  await book.type('Plan', 'Least', 5, 2400);
  expect(notes()[4]).toBe('type its power as it shows it, within least and most');
  await book.type('Plan', 'Power', 5, '2400');
  expect(notes()[4]).toContain('fixed power');
  expect(book.column('Card', 'Set to')[4]).toBe('2400 Ws');
  await book.undo();
  await book.undo();
  expect(said()).toEqual(demo);

  // a smaller opening asks for more light: f/64 for twice what f/45 does
  await form.type('aperture', 64);
  expect(Number(form.cell('pops'))).toBeGreaterThan(Number(demo[0]));
  // "f/64" or a tenth beside it: no light here misses by more than half a step
  expect(form.cell('together')).toMatch(/^f\/(?:64|45 \+0\.9|64 \+0\.1)$/);
  await book.undo();
  expect(said()).toEqual(demo);

  // The background, metered f/1.4 two stops below its full power (1 + 2 = 3 stops over f/1), is to read f/64 (12) through 0.977 of
  // loss (see Pops plan): 9.977 stops, of which 99 pops give log2 99 = 6.629. It is 3.348 too weak.
  await book.type('Plan', 'Reading', 5, 1.4);
  await book.type('Plan', 'Tenths', 5, 0);
  await book.type('Plan', 'Own target', 5, 64);
  expect(notes()[4]).toContain('3.3 stops too weak at 99 pops');
  expect(form.words('pops')).toBe('! out of reach: see the notes');
  expect(book.column('Card', 'Set to')[4]).toBe('2400 Ws');

  const file = await readXlsx(await writeXlsx({ sheets: book.asStands(), names: [] }));
  expect(file.notUnderstood).toEqual([]);
  const opened = await openedBook(file.book.sheets);
  await opened.calculate();
  for (const [i, sheet] of book.plans.entries()) {
    const { rows, columns } = usedArea(sheet);
    const again = opened.read(sheet.name, `A1:${address({ row: rows - 1, column: columns - 1 })}`);
    expect(again.map((row) => row.map(shown))).toEqual(book.values(i).map((row) => row.map(shown)));
  }
  opened.dispose();
  book.dispose();
});
