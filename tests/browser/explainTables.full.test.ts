import { expect, it } from 'vitest';
import { explained } from './explainedCell';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1500 },
);

const view = (piece: string) => explained(sheet, piece);

it('the selected cell reads columns and rows of tables, spilled lists, and cells of other sheets', async () => {
  await sheet.insert('Lights on set');
  await sheet.pane.getByRole('tab', { name: 'Explain' }).click();
  const first = await sheet.page.evaluate(() => {
    const [area = ''] = Object.values(window.sweeptable.tables()).slice(-1);
    return /^([A-Z]+)(\d+)/.exec(area)?.slice(1) ?? [];
  });
  const row = Number(first[1]) + 1;
  const formulas = await Promise.all(
    [...'ABCDEFGHIJKLMNOPQR'].map(async (column) => [`${column}${row}`, (await sheet.cell(`${column}${row}`)).formula] as const), // prettier-ignore
  );
  const [at = '', formula = ''] = formulas.find(([, text]) => /SWEEP\.\w+\([^)]*\[/.test(text)) ?? [];
  expect(formula).toContain('[');
  await sheet.click(at);
  const text = await view(`${at} shows`);
  expect(text).toMatch(/the mark f\/|, as it stands| Ws/);
  expect(text).not.toContain('cannot be looked up');

  await sheet.enter('C40', '=SWEEP.LIGHTSHARE({16;11;8})');
  await sheet.enter('D40', "=SWEEP.LIGHTSUM(C40:C42,'Pops build'!B6)");
  await sheet.click('D40');
  expect(await view('D40 shows')).toContain('0.571429');
  expect(await view('D40 shows')).not.toContain('cannot be looked up');
  await sheet.click('C41');
  await view('If a list spills into it');
});
