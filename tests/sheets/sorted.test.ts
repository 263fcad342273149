import type { Injector } from '@univerjs/core';
import { expect, test } from 'vitest';
import { gridRange } from '../../src/engine/gridRange';
import { sortRows } from '../../src/engine/sort/sortRows';
import { area, type Area } from '../../src/formula/area';
import { areaText } from '../../src/formula/areaText';
import { planAlone } from '../../src/sheets/makePlan';
import { openedBook } from './openedBook';
import { templateOf } from './support';

/** What each row says, whichever place it has; columns that count places are left out. */
const PLACES = ['Order'];

test.each([
  ['fleet-compare', 'Fleet', ['Head', 'From'], 'Ranking'],
  ['mains-plan', 'Load', ['Head', 'Circuit'], 'SwitchOn'],
])('%s is sorted by the names in %s, and says the same of each', async (id, name, key, answers) => {
  const { sheet } = planAlone(templateOf(id), true);
  const book = await openedBook([sheet]);
  await book.calculate();
  const found = sheet.tables.find((table) => table.name === name);
  const shown = sheet.tables.find((table) => table.name === answers);
  if (!found || !shown) throw new Error(`${id} has no ${name}.`);
  const body = ({ row, column, rows, columns }: Area): Area =>
    area({ row: row + 1, column }, rows - 1, columns);
  const rows = () =>
    new Map(
      book.read(sheet.name, areaText(body(found.area))).map((values) => {
        const named = Object.fromEntries(found.columns.map((column, i) => [column.name, values[i] ?? '']));
        const says = Object.entries(named).filter(([column]) => !PLACES.includes(column));
        return [key.map((column) => String(named[column])).join(), Object.fromEntries(says)];
      }),
    );
  const told = () => book.read(sheet.name, areaText(body(shown.area)));
  const [before, said] = [rows(), told()];
  const { _injector: injector } = book.workbook as unknown as { readonly _injector: Injector };
  for (const largestFirst of [true, false]) {
    const outcome = sortRows(injector, {
      unitId: book.workbook.getId(),
      subUnitId: '0',
      range: gridRange(body(found.area)),
      by: [{ column: found.area.column, largestFirst }],
    });
    expect(outcome).toMatchObject({ isChanged: true });
    await book.calculate();
    const names = [...rows().keys()];
    expect(names).not.toEqual([...before.keys()]);
    expect(new Map([...rows()].sort())).toEqual(new Map([...before].sort()));
  }
  // what works, in its order: the place of a row in the table says nothing of that
  const answered = (all: typeof said) => all.slice(0, 4).map((row) => row.slice(0, 4));
  expect(answered(told())).toEqual(answered(said));
  book.dispose();
});
