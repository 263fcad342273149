import { describe, expect, it } from 'vitest';
import { writeXlsx } from '../../src/xlsx/write';
import { openPackage } from '../../src/xlsx/zip';
import { sheetOf } from '../xlsx/parts';
import { allInOneWorkbook } from './onePage';
import { open, saved } from './openedFile';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
});

const LINES: readonly (readonly (string | number)[])[] = [
  ['Camera x', 0, '', '', ''],
  ['Camera y', -1, '', '', ''],
  ['Camera height', 1, '', '', ''],
  ['Camera aim x', 0, '', '', ''],
  ['Camera aim y', 0.5, '', '', ''],
  ['Camera aim height', 1, '', '', ''],
  ['', '', '', '', ''],
  ['Light', 'X', 'Y', 'Height', 'Width'],
  ['key', -0.5, 0.25, 1.5, 0.6],
  ['rim', 0.5, 1, 1.25, 0.2],
];

/** A sheet with places, as a file from elsewhere. */
const places = () =>
  writeXlsx({
    sheets: [
      sheetOf(
        LINES.flatMap((line, row) =>
          line.map((value, column) => ({ row, column, value: value === '' ? null : value })),
        ),
        {
          tables: [
            {
              name: 'Record',
              area: { row: 7, column: 0, rows: 3, columns: 5 },
              columns: ['Light', 'X', 'Y', 'Height', 'Width'].map((name) => ({ name })),
            },
          ],
        },
      ),
    ],
    names: [],
  });
const panel = () => sheet.pane.getByRole('tabpanel', { name: 'Set' });
const picture = () => sheet.page.locator('.charts figure.picture');
const heard = async (): Promise<string> => (await picture().getAttribute('aria-label')) ?? '';

describe('the picture of the set', () => {
  it('is drawn beside the sheet, put on it, follows its cells, and goes into a file', async () => {
    await sheet.pane.getByRole('tab', { name: 'Set' }).click();
    await expect.poll(() => panel().innerText()).toContain('The sheet in view has no places yet.');
    await open(sheet, Buffer.from(await places()));
    await sheet.click('G2');
    await expect.poll(() => panel().getByRole('img').getAttribute('alt')).toContain('1 key: 0.50 m left of the lens, 1.25 m before it, 1.50 m high'); // prettier-ignore

    await panel().getByRole('button', { name: 'Put on the sheet' }).click();
    await expect.poll(heard).toContain('2 rim: 0.50 m right of the lens');
    expect(await picture().locator('svg text').allTextContents()).toContain('1.50 m high');
    await sheet.enterDown('D9', ['1.75']);
    await expect.poll(heard).toContain('1 key: 0.50 m left of the lens, 1.25 m before it, 1.75 m high');

    const parts = openPackage(await saved(sheet));
    const [media = ''] = parts.names.filter((name) => name.startsWith('xl/media/'));
    // the first bytes of every PNG (W3C, Portable Network Graphics, 5.2)
    expect(Array.from((await parts.read(media)) ?? []).slice(0, 8)).toEqual([
      137, 80, 78, 71, 13, 10, 26, 10,
    ]);

    await picture().focus();
    await sheet.page.keyboard.press('Delete');
    await expect.poll(() => picture().count()).toBe(0);
    await sheet.undo('G2');
    await expect.poll(() => picture().count()).toBe(1);
  });
});
