import { beforeEach, expect } from 'vitest';
import type { Workbench } from './workbench';

/** The columns of its table. */
export const COLUMNS = 'ABCDEFGHIJKLMNOPQR'.split('');

/** Before each test there is a sheet "Lights on set" in view, with its answers. Tests that share it leave it as it was. */
export function lightsOnSet(sheet: () => Workbench) {
  beforeEach(async () => {
    if ((await sheet().sheets()).includes('Lights on set')) return;
    await sheet().insert('Lights on set');
    await expect.poll(() => sheet().texts('R17')).not.toEqual(['']);
  });
  return {
    /** What a row of it shows. */
    row: (number: number) => sheet().texts(...COLUMNS.map((column) => `${column}${number}`)),
  };
}
