import { expect, it } from 'vitest';
import { AMBIENT_STEPS, COLUMNS, enterAmbient, LIGHTS, LIGHTS_AND_ONE } from './lightsOnSet';
import type { Workbench } from './workbench';

/** Where a row comes in: what that is called, the row whose menu is opened, its entry, and the number of the new row. */
type Place = readonly [where: string, at: number, entry: string, added: number];

/** What holds for a row that comes into the table of "Lights on set". */
export function checkRowThatComesIn(places: readonly Place[], of: () => Workbench): void {
  it.each(places)('that come in %s calculate, and one undo takes them back', async (_, at, entry, added) => {
    const sheet = of();
    const last = () => sheet.texts(...COLUMNS.map((column) => `${column}38`));
    const formula = async (a1: string) => (await sheet.cell(a1)).formula;
    const before = await last();
    await sheet.rowMenu(at, entry);
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS_AND_ONE);
    expect(await formula(`Q${added}`)).toBe(await formula(`Q${added === 33 ? 34 : 33}`));

    // f/22 alone is 2^4.5, and its share is its light among all.
    await enterAmbient(sheet, added, '22');
    await sheet.showsNear(`Q${added}`, 2 ** 4.5);
    await sheet.showsNear(`X${added}`, 2 ** 9);
    const lights = await sheet.values(...[33, 34, 35, 36, 37, 38, 39].map((r) => `X${r}`));
    const all = lights.reduce<number>((sum, light) => sum + Number(light), 0);
    await sheet.showsNear(`O${added}`, 2 ** 9 / all);
    expect((await sheet.cell(`O${added}`)).text).toMatch(/%$/);

    await sheet.enter(`M${added}`, '-3');
    await sheet.told('Metres from the front of the light to the subject, above 0 and up to 20.');
    await sheet.shows(`M${added}`, null);

    for (let step = 0; step < AMBIENT_STEPS; step++) await sheet.undo('A3');
    await expect.poll(async () => (await sheet.cell(`A${added}`)).value).toBe(null);
    await sheet.undo('A3');
    await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS);
    await expect.poll(last).toEqual(before);
  });
}
