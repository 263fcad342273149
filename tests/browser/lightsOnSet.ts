import { beforeEach, expect } from 'vitest';
import type { Workbench } from './workbench';

/** The columns of its table of lights, whose first row is the 33rd and whose last the 38th. */
export const COLUMNS = [
  ...'ABCDEFGHIJKLMNOPQRSTUVWXYZ',
  ...[...'ABCDEFGHIJKL'].map((letter) => `A${letter}`),
];
/** Its tables, by their cells. */
export const LIGHTS = 'A32:AO38';
export const LIGHTS_AND_ONE = 'A32:AO39';
export const TURN = 'A16:H28';
/** The light of its key, which reads f/16 and five tenths, in the cell that other cells take it from. */
export const KEY_LIGHT = { cell: 'Z8', value: 2 ** 8.5 } as const;

/** Where its table of lights is in sight. */
export const TALL = { height: 1300 } as const;

/** Types a light that needs no head, and is whole with that. */
export async function enterAmbient(sheet: Workbench, row: number, reading: string): Promise<void> {
  await sheet.enter(`A${row}`, 'Lamp');
  await sheet.enter(`B${row}`, 'ambient');
  await sheet.enter(`D${row}`, reading);
  await sheet.enter(`F${row}`, 'yes');
}
/** Steps that it takes. */
export const AMBIENT_STEPS = 4;

/** Before each test there is a sheet "Lights on set" in view, with its answers. Tests that share it leave it as it was. */
export function lightsOnSet(sheet: () => Workbench) {
  beforeEach(async () => {
    if ((await sheet().sheets()).includes('Lights on set')) return;
    await sheet().insert('Lights on set');
    await expect.poll(() => sheet().texts('AG37')).not.toEqual(['']);
  });
  return {
    /** What a row of it shows. */
    row: (number: number) => sheet().texts(...COLUMNS.map((column) => `${column}${number}`)),
  };
}
