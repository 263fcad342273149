import { expect, test } from 'vitest';
import { address } from '../../../src/formula/address';
import { areaText } from '../../../src/formula/areaText';
import { recordLights } from '../../../src/pane/records';
import { setImage } from '../../../src/set/setImage';
import { ON_PAPER } from '../../../src/set/svg';
import { openedBook } from '../../sheets/openedBook';
import { cellOf, columnOf } from '../../sheets/recordPlaces';
import { blockAt } from './support/a1';
import { openExcel, sheetOf } from './support/laid';
import type { Sheet } from './support/sheet';

/** What Excel would calculate of a sheet, by the engine of the grid: the workbook in memory calculates nothing. */
async function calculated({ name, cells, tables }: Sheet) {
  const book = await openedBook([
    {
      name,
      cells: [...cells].map(([at, held]) => {
        const { row, column } = blockAt(at);
        const isFormula = typeof held === 'string' && held.startsWith('=');
        return { row, column, ...(isFormula ? { formula: held, value: null } : { value: held as string | number }) };
      }),
      tables: tables.map((table) => ({ name: table.name, area: table.block, columns: [] })),
    },
  ]); // prettier-ignore
  await book.calculate();
  return {
    column: (id: string, column: string) => book.read(name, areaText(columnOf(id, column, 6))).flat(),
    cell: (id: string) => book.read(name, cellOf(id))[0]?.[0],
    dispose: () => book.dispose(),
  };
}

test('lights are recorded from the set, found changed, brought back and drawn', async () => {
  const { host, workbook } = openExcel();
  await host.insertSheet('lights-on-set', true);
  await recordLights(host.sheets);
  const sheet = sheetOf(workbook, 'Shot record');
  const type = (column: string, values: readonly (number | string)[]) => {
    const { row, column: at } = columnOf('Record', column, values.length);
    for (const [i, value] of values.entries()) sheet.cells.set(address({ row: row + i, column: at }), value);
  };
  for (const id of ['iso', 'isoToday']) sheet.cells.set(cellOf(id), 100);

  // The record has f/16 +0.5, f/8 +0.9, f/11 +0.3, f/11 +0.1, f/11 +0.5 and, ambient, f/2. Today all is 0.3 brighter; beside that
  // the key is 0.7 brighter (f/16 + 1.5), the rim 1.2 darker (f/11 − 0.6) and the background 0.5 brighter (f/11 + 1.3).
  type('Today', [22, 11, 8, 11, 16, 2]);
  type('Its tenths', [5, 2, 4, 4, 3, 3]);
  const today = await calculated(sheet);
  expect(today.cell('common')).toBeCloseTo(0.3, 6);
  expect(today.cell('brings')).toBe('to one common difference; as it was if no more than 2 changed');
  // A half less 0.7; a quarter times 2^1.2 = 57.4 %; 600 Ws times 2^−0.5 = 424 Ws: within half a tenth of each.
  expect(today.column('Again', 'Turn by')).toEqual(['−0.7', '0', '+1.2', '0', '−0.5', '']);
  expect(today.column('Again', 'Set to')).toEqual(['1/2 −0.7', '8.5', '57 %', '12.5 %', '424 Ws', '']);
  today.dispose();

  // Where they stand comes later; what has no place is said.
  const before = await host.pictures.readSheet();
  if ('refused' in before) throw new Error(before.refused);
  expect(setImage(before, 1000, ON_PAPER)).toBeUndefined();
  for (const [column, value] of [['X', -0.5], ['Y', 0.25], ['Height', 1.5]] as const) type(column, [value]); // prettier-ignore
  for (const [id, value] of [['cameraX', 0], ['cameraY', -1], ['cameraHeight', 1], ['cameraAimX', 0], ['cameraAimY', 0.5], ['cameraAimHeight', 1]] as const) sheet.cells.set(cellOf(id), value); // prettier-ignore
  workbook.select('Shot record', cellOf('shot'));
  const of = await host.pictures.readSheet();
  if ('refused' in of) throw new Error(of.refused);
  const made = setImage(of, 1000, ON_PAPER);
  expect(made?.said).toContain('1 key, Alder 600: 0.50 m left of the lens, 1.25 m before it, 1.50 m high');
  expect(made?.said).toContain('rim, Hazel 400 has no place');
  const { said = '', width = 0, height = 0 } = made ?? {};
  const png = () => Promise.resolve(new Blob([new Uint8Array([1])]));
  expect(await host.pictures.putPicture({ of, said, width, height, png })).toMatchObject({
    done: expect.stringContaining('it would have covered what stands there') as string,
  });

  await host.copyValues();
  const copy = sheetOf(workbook, 'Shot record values');
  const pictures = [sheet, copy].map(({ item }) => item.children.get('Shapes')?.members ?? []);
  expect(pictures.map((all) => all.map(({ properties }) => properties.AltTextDescription))).toEqual([[said], [said]]);
}); // prettier-ignore
