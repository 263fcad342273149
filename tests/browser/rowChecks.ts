import { expect, it } from 'vitest';
import { COLUMNS } from './lightsOnSet';
import type { Workbench } from './workbench';

/** Where a row comes in: what that is called, the row whose menu is opened, its entry, and the number of the new row. */
type Place = readonly [where: string, at: number, entry: string, added: number];

/** What holds for a row that comes into the table of "Lights on set". */
export function checkRowThatComesIn(places: readonly Place[], of: () => Workbench): void {
  it.each(places)('that come in %s calculate, and one undo takes them back', async (_, at, entry, added) => {
    const sheet = of();
    const last = () => sheet.texts(...COLUMNS.map((column) => `${column}17`));
    const formula = async (a1: string) => (await sheet.cell(a1)).formula;
    const before = await last();
    await sheet.rowMenu(at, entry);
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', 'A12:R18');
    expect(await formula(`J${added}`)).toBe(await formula(`J${added === 13 ? 14 : 13}`));

    // f/22 alone is 2^4.5, and its share is its light among all.
    await sheet.enter(`H${added}`, '22');
    await sheet.showsNear(`J${added}`, 2 ** 4.5);
    const lights = await sheet.values(...[13, 14, 15, 16, 17, 18].map((r) => `K${r}`));
    const all = lights.reduce<number>((sum, light) => sum + Number(light), 0);
    await sheet.showsNear(`L${added}`, 2 ** 9 / all);
    expect((await sheet.cell(`L${added}`)).text).toMatch(/%$/);

    await sheet.enter(`G${added}`, '-3');
    await sheet.told('Metres from the front of the light to the subject, above 0.');
    await sheet.shows(`G${added}`, null);

    await sheet.undo('A3');
    await expect.poll(async () => (await sheet.cell(`H${added}`)).value).toBe(null);
    await sheet.undo('A3');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', 'A12:R17');
    await expect.poll(last).toEqual(before);
  });
}
