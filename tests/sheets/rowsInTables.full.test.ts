import { describe, expect, test } from 'vitest';
import { TEMPLATES } from '../../src/sheets/templates';
import { layout } from '../../src/sheets/layout';
import { editedSheet } from './editedSheet';

/** Columns of the page: right of them stands how answers come about, where rows may be counted otherwise. */
const PAGE = 9;
/** A recording with a gap in it is doubted, and said to be. */
const DOUBTED = ['Trace'];

const ERROR = /^#/;

const ALL = TEMPLATES.filter(({ id }) => id !== 'proof').map((template) => ({
  id: template.id,
  tables: [...layout(template).tables.values()].filter(({ id }) => !DOUBTED.includes(id)),
}));

describe.each(ALL)('$id', ({ id, tables }) => {
  test.each(tables.map(({ id: name, rows }) => [name, rows.length] as const))(
    'a row that is inserted in %s changes no answer outside of tables, and holds no error',
    async (name, count) => {
      for (const at of [0, Math.min(2, count - 1)]) {
        const sheet = await editedSheet(id);
        const before = sheet.everything();
        const row = sheet.topOf(name) + at;
        sheet.insertRow(row);
        // the tables through which the row goes get their formulas, but for a first row, as in other programs
        for (const { id: other, rows } of tables) {
          const place = row - sheet.topOf(other);
          if (place > 0 && place < rows.length) sheet.fillFromAbove(other, place);
        }
        await sheet.calculate();
        const after = sheet.everything();
        const [own = []] = after.splice(row, 1);
        expect(own.filter((value) => typeof value === 'string' && ERROR.test(value))).toEqual([]);
        const outside = (all: readonly unknown[][]) =>
          all.map((line, i) => line.slice(0, PAGE).filter((_, column) => !sheet.isInTable(i, column)));
        expect(outside(after)).toEqual(outside(before.slice(0, after.length)));
        sheet.dispose();
      }
    },
  );
});
