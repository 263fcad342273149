import {
  type Arbitrary,
  array,
  assert,
  constant,
  constantFrom,
  nat,
  oneof,
  property,
  tuple,
} from 'fast-check';
import { describe, expect, test } from 'vitest';
import { trials } from '../full';
import { CATALOGUE, rowOf } from '../../src/catalogue';
import { type AnyRow, type Arg, isChoice, isChosen, isTruth, quantitiesOf } from '../../src/catalogue/types';
import { type AnswerCell, call } from '../../src/cells/call';
import { cellError, isCellError } from '../../src/formula/errors';

/** What the cells of an argument may hold: its own forms, numbers and words, and what does not belong there. */
function cellsFor(arg: Arg): Arbitrary<unknown> {
  const words = isChoice(arg.kind) ? arg.kind.choices : isTruth(arg.kind) ? ['TRUE', 'no'] : [];
  const forms = quantitiesOf(arg.kind).flatMap((quantity) => quantity.forms);
  const own = [...words, ...forms, 8, 11, 11.3, 0.25, 400];
  return oneof(
    { weight: 8, arbitrary: constantFrom<unknown>(...own) },
    { weight: 1, arbitrary: constantFrom<unknown>(0, null, '', 'none', 'odd', 46_023, -3, true, 1e300) },
    { weight: 1, arbitrary: constant<unknown>(cellError('#DIV/0!')) },
  );
}

const isDecided = (row: AnyRow, name: string): boolean =>
  (row.args as readonly Arg[]).some(
    ({ kind }) => isChosen(kind) && ('by' in kind ? kind.by : kind.given) === name,
  );

/** A blank argument is a refusal where it stands alone. In a column its row is blank, or has the refusal of another cell. */
const isMissing = (cell: AnswerCell): boolean => isCellError(cell) && /is missing: /.test(cell.message ?? '');

const spreading = CATALOGUE.filter(
  ({ answers, args }) => answers === 'one' && (args as readonly Arg[]).every((arg) => arg.takes === 'one'),
);

describe('a column gives what each of its rows gives alone', () => {
  test.each(spreading.map((row) => [row.id, row] as const))('%s', (_, row) => {
    const args = row.args as readonly Arg[];
    const line = tuple(...args.map(cellsFor));
    assert(
      property(array(line, { minLength: 2, maxLength: 6 }), (lines) => {
        const columns = args.map((__, i) => lines.map((cells) => [cells[i]]));
        const answer = call(row, columns) as AnswerCell[][];
        for (const [i, cells] of lines.entries()) {
          const alone = call(row, cells) as AnswerCell;
          const cell = answer[i]?.[0] as AnswerCell;
          if (isMissing(alone)) expect(cell === '' || isCellError(cell)).toBe(true);
          else expect(cell).toEqual(alone);
        }
      }),
      trials(401, 60),
    );
  });
});

describe('a column beside single cells gives what each of its rows gives alone, whichever argument it is', () => {
  test.each(spreading.map((row) => [row.id, row] as const))('%s', (_, row) => {
    const args = row.args as readonly Arg[];
    const line = tuple(...args.map(cellsFor));
    assert(
      property(
        nat(args.length - 1),
        line,
        array(line, { minLength: 2, maxLength: 6 }),
        (place, fixed, lines) => {
          const withCell = (cell: unknown): unknown[] => fixed.map((one, i) => (i === place ? cell : one));
          const column = lines.map((cells) => [cells[place]]);
          const answer = call(row, withCell(column));
          // what is wrong with a single cell is said once, for the whole column
          const rows = Array.isArray(answer) ? answer : lines.map(() => [answer]);
          for (const [i, [cell]] of column.entries()) {
            const alone = call(row, withCell(cell)) as AnswerCell;
            const one = rows[i]?.[0];
            if (isMissing(alone)) expect(one === '' || isCellError(one)).toBe(true);
            else if (rows === answer) expect(one).toEqual(alone);
            else expect([isCellError(one), isCellError(alone)]).toEqual([true, true]);
          }
        },
      ),
      trials(411, 60),
    );
  });
});

test('some arguments are decided by others, so that the property above meets columns of mixed quantities', () =>
  expect(spreading.some((row) => (row.args as readonly Arg[]).some(({ name }) => isDecided(row, name)))).toBe(
    true,
  ));

test('a repeated text is read alike in every row, a refused one refused in every row', () => {
  const row = rowOf('STOPDIFF') as AnyRow;
  const texts = Array.from({ length: 5000 }, (_, i) => [
    i % 3 === 0 ? 'f/16' : i % 3 === 1 ? `f/${i}` : 'odd',
  ]);
  const answer = call(row, [8, texts]) as AnswerCell[][];
  for (const [i, [cell]] of answer.entries()) expect(cell).toEqual(call(row, [8, texts[i]?.[0]]));
});

test('a column of texts that are all different is read to its end', () => {
  const row = rowOf('STOPDIFF') as AnyRow;
  const texts = Array.from({ length: 9000 }, (_, i) => [`f/${i + 1}.55`]);
  const answer = call(row, [8, texts]) as AnswerCell[][];
  for (const [i, [cell]] of answer.entries()) expect(cell).toBeCloseTo(2 * Math.log2((i + 1.55) / 8), 11);
});
