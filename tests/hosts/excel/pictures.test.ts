import { describe, expect, test } from 'vitest';
import { readSet } from '../../../src/set/readSet';
import { FULL } from '../../full';
import { openExcel, sheetOf } from './support/laid';
import { hostFiles, type HostFile } from './support/office-host';
import { blockAt } from './support/a1';

const HEADINGS = ['Light', 'X', 'Y', 'Height'];
const PICTURE = {
  of: { name: 'Sheet1', cells: [], tables: [] },
  said: 'One light.',
  width: 1000,
  height: 600,
  png: () => Promise.resolve(new Blob([new Uint8Array([1, 2, 3])])),
};

const ELSEWHERE = { ...PICTURE, of: { ...PICTURE.of, name: 'Elsewhere' } };

/** A table of lights from B3 on. */
function open(file?: HostFile) {
  const opened = openExcel(file && { file });
  const sheet = sheetOf(opened.workbook, 'Sheet1');
  for (const [i, letter] of [...'BCDE'].entries()) {
    sheet.cells.set(`${letter}3`, HEADINGS[i]);
    sheet.cells.set(`${letter}4`, ['key', -0.5, 0.2, 1.4][i]);
  }
  sheet.cells.set('A1', 'Camera x').set('B1', 0.6);
  sheet.addTable(blockAt('B3:E4'), 'Record');
  opened.workbook.select('Sheet1', 'G2');
  opened.workbook.log.length = 0;
  return { ...opened, sheet };
}

describe.each(hostFiles(FULL))('a picture of the set, through %s,', (file) => {
  test('is drawn from the sheet as it stands, which is only read', async () => {
    const opened = open(file);
    const sheet = await opened.host.pictures.readSheet();
    if ('refused' in sheet) throw new Error(sheet.refused);
    expect(sheet.tables).toEqual([{ row: 2, column: 1, rows: 2, columns: 4 }]);
    expect(readSet(sheet)?.setUp.lights[0]).toMatchObject({ name: 'key', at: { x: -0.5, y: 0.2, z: 1.4 } });
    expect(opened.workbook.log).toEqual([]);
  });
  test('is put at the selected cell, said in words, in the place of an earlier one, and taken away again', async () => {
    const opened = open(file);
    const shapes = () => opened.sheet.item.children.get('Shapes')?.members ?? [];
    expect(await opened.host.pictures.putPicture(PICTURE)).toMatchObject({
      done: 'The picture of the set stands on “Sheet1”, from G2 on. It shows the set as it is now: put it there anew when places have changed. On paper it is only where it stands within what the sheet prints.',
    });
    expect(shapes()).toHaveLength(1);
    // G2 has six columns of 48 points to its left and one row of 15 above it;
    // three bytes are four letters, and 1000 pixels of 96 to an inch are 750 points of 72
    expect(opened.workbook.log[0]).toContain('AQID');
    expect(shapes()[0]?.properties).toMatchObject({
      AltTextDescription: 'One light.',
      Width: 750,
      Height: 450,
      Left: 288,
      Top: 15,
    });
    const again = await opened.host.pictures.putPicture(PICTURE);
    expect(shapes()).toHaveLength(1);
    expect('takeBack' in again && (await again.takeBack?.())).toEqual({
      done: 'The picture on “Sheet1” is taken away.',
    });
    expect(shapes()).toHaveLength(0);
  });
  test('covers nothing that stands on the sheet: it goes where there is room, which is selected then', async () => {
    const opened = open(file);
    opened.workbook.select('Sheet1', 'A1');
    const of = await opened.host.pictures.readSheet();
    if ('refused' in of) throw new Error(of.refused);
    // six columns and four rows are in use; the table comes down in B to E, and A holds a label
    expect(await opened.host.pictures.putPicture({ ...PICTURE, of })).toMatchObject({
      done: expect.stringContaining(
        'from F3 on. From A1 on it would have covered what stands there.',
      ) as string,
    });
    const [shape] = opened.sheet.item.children.get('Shapes')?.members ?? [];
    expect(shape?.properties).toMatchObject({ Left: 5 * 48, Top: 2 * 15 });
    expect(opened.workbook.selection).toMatchObject({ block: blockAt('F3') });
  });
  test('stands on the copy of values as well', async () => {
    const opened = open(file);
    await opened.host.pictures.putPicture(PICTURE);
    const copy = await opened.host.copyValues();
    expect('done' in copy && copy.done).toContain('holds the values as they are now');
    const names = opened.workbook.sheets.map(({ item }) =>
      (item.children.get('Shapes')?.members ?? []).map(({ properties }) => properties.Name),
    );
    expect(names).toEqual([['Picture of the set'], ['Picture of the set']]);
  });
  test('is put nowhere where its sheet is not in view', async () => {
    const opened = open(file);
    const outcome = await opened.host.pictures.putPicture(ELSEWHERE);
    expect(outcome).toEqual({ refused: '“Elsewhere” is not in the workbook any more. Nothing was changed.' });
    opened.workbook.addSheet('Elsewhere');
    expect(await opened.host.pictures.putPicture(ELSEWHERE)).toEqual({
      refused: '“Elsewhere” is not in view any more. Nothing was put anywhere.',
    });
    expect(opened.workbook.log).toEqual([]);
  });
});
