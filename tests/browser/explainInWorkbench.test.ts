import { beforeEach, describe, expect, it } from 'vitest';
import { enterShown } from './cellInWorkbench';
import { AT } from './explainChecks';
import { explained } from './explainedCell';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1500 },
);
beforeEach(() => sheet.pane.getByRole('tab', { name: 'Explain' }).click());

const view = (piece: string) => explained(sheet, piece);

describe('the selected cell of the workbench', () => {
  it('is explained again when what it uses changes', async () => {
    await enterShown(sheet, 'H5', '11', '11');
    await enterShown(sheet, AT, '=SWEEP.STOPDIFF(8,H5)', '1');
    await sheet.click(AT);
    expect(await view(`${AT} shows 1`)).toContain('the mark f/11, 11.31');
    await enterShown(sheet, 'H5', '16', '16');
    await sheet.click(AT);
    expect(await view(`${AT} shows 2`)).toContain('the mark f/16');
  });
});
