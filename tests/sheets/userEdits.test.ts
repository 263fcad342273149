import { expect, test } from 'vitest';
import { findJoins } from '../../src/sheets/links/findJoins';
import { TEMPLATES } from '../../src/sheets/templates';
import { layout } from '../../src/sheets/layout';
import { templateOf } from './support';
import { together } from './together';

const CARD = templateOf('set-card');

/** Heads, Pops plan and Set card as they were inserted one after the other. */
async function three() {
  const book = await together(['heads', 'pops-plan', 'set-card'].map((id) => ({ template: templateOf(id) })));
  const onCard = (id: string) => {
    const place = layout(CARD).cells.get(id)?.place;
    return place && book.values(2)[place.row]?.[place.column];
  };
  const said = () => ({
    dials: book.column('Card', 'Set to').slice(0, 5),
    notes: book.column('Dial', 'Note').slice(0, 5),
    card: ['pops', 'one', 'adding', 'state'].map(onCard),
  });
  return { ...book, said };
}

const NOTHING = { dials: ['', '', '', '', ''], card: ['', '', '', 'no: see the plan'] };

test('what somebody does to the columns and sheets that others look up in', async () => {
  const book = await three();
  const before = book.said();
  expect(before.card.at(-1)).toBe('yes');
  const joins = () => findJoins(TEMPLATES, book.here());

  // a column of Heads goes: no number is left that stood on it, and each row says so
  let undo = await book.deleteColumn('Models', 'Most');
  expect(book.said()).toEqual({ ...NOTHING, notes: before.dials.map(() => 'not in Heads, or its row there is not ready') });
  expect(joins().map(({ sheet, lost }) => [sheet, lost.includes('Most')])).toEqual([['Pops plan', true]]);
  await undo();
  expect([book.said(), joins()]).toEqual([before, []]);

  // so it is where the plan loses its own
  undo = await book.deleteColumn('Plan', 'Most');
  const { notes, ...rest } = book.said();
  expect(rest).toEqual(NOTHING);
  for (const note of notes) expect(note).not.toBe('');
  await undo();
  expect(book.said()).toEqual(before);

  // sheets by other names say what they said, and follow
  book.rename('Heads', 'Our flashes');
  book.rename('Pops plan', 'Thursday');
  await book.calculate();
  expect([book.said(), joins()]).toEqual([before, []]);
  await book.type('Models', 'Least', 1, 9.5);
  expect(book.column('Plan', 'Least')[0]).toBe(9.5);
  book.dispose();
}); // prettier-ignore
