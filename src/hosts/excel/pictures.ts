import { address } from '../../formula/address';
import { addressParts } from '../../formula/sheetPlace';
import type { Outcome, PictureHost, SheetPicture } from '../../pane/host';
import { NOT_WRITTEN, notInView, pictureGone, pictureStands } from '../../pane/sentences';
import { placeFor, type Starts } from '../../set/placeFor';
import { inLines, type SheetAsRead } from '../../set/sheetAsRead';
import { base64 } from './base64';
import { WHEN_READY } from './lay';
import { excelRange } from './ranges';
import { askUsed, readUsed } from './readInView';
import { AREA, areaOfRange } from './usedCells';

/** More cells than this are no sheet of a set, and Excel would be long about them each time. */
const MOST_CELLS = 50_000;
const TOO_LARGE = { refused: 'The sheet in view is too large to be a set: more than 50,000 cells.' } as const;

/** By this an earlier picture of the set is known. */
const NAME = 'Picture of the set';
/** Points of a pixel. */
const POINT = 72 / 96;

/** The sheet in view, with what its cells show. */
export const readSheet: (excel: typeof Excel) => ReturnType<PictureHost['readSheet']> = (excel) =>
  excel.run(async (context): Promise<SheetAsRead | typeof TOO_LARGE> => {
    const sheet = context.workbook.worksheets.getActiveWorksheet().load('name');
    const used = askUsed(sheet);
    const tables = sheet.tables.load('items/name');
    await context.sync();
    if (!used.isNullObject) {
      const { row, column, rows, columns } = areaOfRange(used);
      if ((row + rows) * (column + columns) > MOST_CELLS) return TOO_LARGE;
    }
    return inLines(await readUsed(context, { sheet, tables }, used));
  });

/** Rows and columns beyond what is in use in which a picture may end. */
const BEYOND = { rows: 200, columns: 60 } as const;

/** Where each index begins, from the lengths of those before it; further ones are as long as the last. */
function startsOf(lengths: readonly number[]): (index: number) => number {
  const starts = [0];
  for (const length of lengths) starts.push((starts[starts.length - 1] ?? 0) + length);
  const last = lengths[lengths.length - 1] ?? 0;
  return (index) => starts[index] ?? (starts[starts.length - 1] ?? 0) + (index - lengths.length) * last;
}

/**
 * Asks where rows and columns begin, in points: a range tells how far it is from the first cell only from ExcelApi 1.10 on. Gives
 * how to read it after the next sync.
 */
function askStarts(sheet: Excel.Worksheet, rows: number, columns: number): () => Starts {
  const widths = excelRange(sheet, { row: 0, column: 0, rows: 1, columns }).getColumnProperties({
    columnHidden: true,
    format: { columnWidth: true },
  });
  const heights = excelRange(sheet, { row: 0, column: 0, rows, columns: 1 }).getRowProperties({
    rowHidden: true,
    format: { rowHeight: true },
  });
  return () => ({
    row: startsOf(heights.value.map(({ rowHidden, format }) => (rowHidden ? 0 : (format?.rowHeight ?? 0)))),
    column: startsOf(
      widths.value.map(({ columnHidden, format }) => (columnHidden ? 0 : (format?.columnWidth ?? 0))),
    ),
  });
}

/** Takes the picture away again that is known by its id, where it is still there. */
const takeAway = (excel: typeof Excel, sheetName: string, id: string): Promise<Outcome> =>
  excel.run(WHEN_READY, async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(sheetName).load('name');
    await context.sync();
    if (sheet.isNullObject) return NOT_WRITTEN.gone(sheetName);
    const shapes = sheet.shapes.load('items/id');
    await context.sync();
    shapes.items.find((shape) => shape.id === id)?.delete();
    await context.sync();
    return { done: pictureGone(sheetName) };
  });

/** Puts the picture at the selected cell of its sheet, in the place of an earlier one. */
export async function putPicture(
  excel: typeof Excel,
  { of, said, width, height, png }: SheetPicture,
  told: (work: Promise<Outcome>, kept: string) => Promise<Outcome>,
): Promise<Outcome> {
  const { name, cells } = of;
  const pixels = base64(new Uint8Array(await (await png()).arrayBuffer()));
  return excel.run(WHEN_READY, async (context) => {
    const selected = context.workbook.getSelectedRange().load(`address,${AREA}`);
    const sheet = context.workbook.worksheets.getItemOrNullObject(name).load('name');
    await context.sync();
    const { sheet: inView } = addressParts(selected.address);
    if (sheet.isNullObject) return NOT_WRITTEN.gone(name);
    if (inView !== name) return notInView(name);
    const shapes = sheet.shapes.load('items/name');
    const from = areaOfRange(selected);
    const used = cells.reduce((most, line) => Math.max(most, line.length), 0);
    const asked = askStarts(
      sheet,
      Math.max(cells.length, from.row) + BEYOND.rows,
      Math.max(used, from.column) + BEYOND.columns,
    );
    await context.sync();
    const size = { width: width * POINT, height: height * POINT };
    const starts = asked();
    const place = placeFor(of, from, size, starts);
    const at = address(place);
    if (at !== address(from)) sheet.getRange(at).select();
    const earlier = shapes.items.filter((shape) => shape.name === NAME);
    const image = shapes.addImage(pixels);
    Object.assign(image, {
      name: NAME,
      altTextDescription: said,
      left: starts.column(place.column),
      top: starts.row(place.row),
      ...size,
    });
    for (const shape of earlier) shape.delete();
    image.load('id');
    await context.sync();
    const { id } = image;
    const stays =
      'It shows the set as it is now: put it there anew when places have changed. On paper it is only where it stands within what the sheet prints.';
    return {
      done: `${pictureStands(name, at, address(from))} ${stays}`,
      takeBack: () => told(takeAway(excel, name, id), `The picture may still be on “${name}”.`),
    };
  });
}
