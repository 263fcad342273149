import { expect, it } from 'vitest';
import { address } from '../../src/formula/address';
import { openPackage } from '../../src/xlsx/zip';
import { cellOf, columnOf } from '../sheets/recordPlaces';
import { eachItsWorkbook } from './onePage';
import { saved } from './openedFile';
import { recordLights } from './recordChecks';
import { asSheetsHost, copyAsValues } from './sheetsInWorkbench';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1900 },
);

const LIGHTS = 6;
const cellsOf = (id: string, name: string): string[] => {
  const { row, column } = columnOf(id, name, LIGHTS);
  return Array.from({ length: LIGHTS }, (_, i) => address({ row: row + i, column }));
};
const [today = '', places = '', height = ''] = ['Today', 'X', 'Height'].map(
  (name) => cellsOf('Record', name)[0],
);
/** What "Light it again" says of each light: how far to turn it, and to what. */
const again = async () => ({
  turn: await sheet.texts(...cellsOf('Again', 'Turn by')),
  to: await sheet.texts(...cellsOf('Again', 'Set to')),
});
const typed = (lines: readonly (readonly (string | number)[])[]): string =>
  lines.map((line) => line.join('\t')).join('\n');

it('lights are recorded, found changed, brought back and drawn, and a copy and a file keep the picture', async () => {
  await recordLights(asSheetsHost(sheet));
  await sheet.enter(cellOf('iso'), '100');
  await sheet.enter(cellOf('isoToday'), '100');
  // The record has f/16 +0.5, f/8 +0.9, f/11 +0.3, f/11 +0.1, f/11 +0.5 and, ambient, f/2. Today the key is 0.7 brighter
  // (f/16 + 1.2), the rim 1.2 darker (f/11 − 0.9), the background 0.5 brighter; the others are as they were.
  await sheet.paste(today, typed([[22, 2], [8, 9], [8, 1], [11, 1], [16, 0], [2, 0]])); // prettier-ignore
  await sheet.showsNear(cellOf('common'), 0);
  // A half less 0.7; a quarter of the power times 2^1.2 = 57.4 %; 600 Ws times 2^−0.5 = 424 Ws: within half a tenth of each.
  const back = {
    turn: ['−0.7', '0', '+1.2', '0', '−0.5', ''],
    to: ['1/2 −0.7', '8.5', '57 %', '12.5 %', '424 Ws', ''],
  };
  await expect.poll(again).toEqual(back);
  expect(await sheet.texts(cellOf('brings'))).toEqual([
    'to one common difference; as it was if no more than 2 changed',
  ]);

  // All of it 0.3 brighter besides, as by another meter: that is named, and each is turned by the same as before.
  await sheet.paste(today, typed([[22, 5], [11, 2], [8, 4], [11, 4], [16, 3], [2, 3]])); // prettier-ignore
  await sheet.showsNear(cellOf('common'), 0.3);
  await expect.poll(again).toEqual(back);
  expect((await sheet.texts(cellOf('commonSays')))[0]).toContain('all 0.3 brighter: see the meter first');

  // Where they stand is typed, and the camera: the picture follows.
  await sheet.pane.getByRole('tab', { name: 'Set' }).click();
  const panel = sheet.pane.getByRole('tabpanel', { name: 'Set' });
  await expect.poll(() => panel.innerText()).toContain('The sheet in view has no places yet.');
  await sheet.paste(places, typed([[-0.5, 0.25, 1.5, 0, 0.5, 1], [0.5, 1, 1.25, 0, 0.5, 1]])); // prettier-ignore
  await sheet.paste(cellOf('tableHeight'), typed([[0.75], [0], [-1], [1]]));
  await sheet.paste(cellOf('cameraAimX'), typed([[0], [0.5], [1], [53.4], [40]]));
  // One metre before the lens plus a quarter; what has no place is named, and nowhere in the picture.
  const alt = () => panel.getByRole('img').getAttribute('alt');
  await expect.poll(alt).toContain('1 key, Alder 600: 0.50 m left of the lens, 1.25 m before it, 1.50 m high');
  expect(await alt()).toContain('rim, Hazel 400 has no place');

  // a cell is chosen, and filled: the picture covers nothing of the sheet.
  await panel.getByRole('button', { name: 'Put on the sheet' }).click();
  const picture = sheet.page.locator('.charts figure.picture');
  const heard = async () => (await picture.getAttribute('aria-label')) ?? '';
  await expect.poll(heard).toContain('1 key, Alder 600: 0.50 m left of the lens');
  expect(await sheet.texts(...['tableHeight', 'iso', 'isoToday'].map(cellOf))).toEqual(['0.75 m', 'ISO 100', 'ISO 100']);
  const below = await sheet.pane.locator('.status [role=status]').innerText();
  expect(below).toContain('it would have covered what stands there.');
  const words = await heard();

  await copyAsValues(sheet, 'Shot record values');
  await expect.poll(heard).toBe(words);
  // it is drawn from the values of the copy from now on
  await sheet.enter(height, '1.75');
  await expect.poll(heard).toContain('1.25 m before it, 1.75 m high');
  await sheet.sheet('Shot record');
  await expect.poll(heard).toBe(words);

  const parts = openPackage(await saved(sheet));
  const drawings = parts.names.filter((name) => /^xl\/drawings\/drawing\d+\.xml$/.test(name));
  const said = await Promise.all(
    drawings.map(async (name) => new TextDecoder().decode(await parts.read(name))),
  );
  const heights = said.flatMap((xml) => /descr="[^"]*key, Alder 600: [^"]*?(1\.\d\d) m high/.exec(xml)?.[1] ?? []);
  expect(heights.sort()).toEqual(['1.50', '1.75']);
}); // prettier-ignore

it('the picture is printed whole, and the table that is typed is not', async () => {
  await sheet.insert('Shot record');
  await sheet.pane.getByRole('tab', { name: 'Set' }).click();
  await sheet.pane.getByRole('button', { name: 'Put on the sheet' }).click();
  await expect.poll(() => sheet.page.locator('.charts figure.picture').count()).toBe(1);
  await sheet.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await sheet.page.emulateMedia({ media: 'print' });
  const paper = sheet.page.locator('.paper');
  const pages = await paper.locator('section').allInnerTexts();
  expect(pages).toHaveLength(3);
  expect(pages[0]).toContain('As it was lit');
  expect(pages[1]).toContain('Light it again');
  expect(pages.join(' ')).not.toContain('The lights: as they were, and today');
  // each word of the picture stands on its page
  const figure = paper.locator('section').nth(2).locator('figure.picture');
  const [around, ...inside] = await figure.evaluate((element) =>
    [element.closest('section'), element, ...element.querySelectorAll('text')].map((each) => {
      const { left, top, right, bottom } = (each as Element).getBoundingClientRect();
      return { left, top, right, bottom };
    }),
  );
  expect(inside.length).toBeGreaterThan(15);
  for (const { left, top, right, bottom } of inside) {
    expect(left).toBeGreaterThanOrEqual((around?.left ?? 0) - 1);
    expect(top).toBeGreaterThanOrEqual((around?.top ?? 0) - 1);
    expect(right).toBeLessThanOrEqual((around?.right ?? 0) + 1);
    expect(bottom).toBeLessThanOrEqual((around?.bottom ?? 0) + 1);
  }
  await sheet.page.emulateMedia({ media: null });
  await sheet.page.evaluate(() => dispatchEvent(new Event('afterprint')));
});
