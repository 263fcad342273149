import { expect } from 'vitest';
import { AT, type ExplainedCell, type Explaining } from './explainChecks';
import type { Workbench } from './workbench';

/** Types into a cell and waits until it shows what it should. */
export async function enterShown(sheet: Workbench, at: string, text: string, shows: string): Promise<void> {
  await sheet.enter(at, text);
  await expect.poll(() => sheet.texts(at), { timeout: 10_000 }).toEqual([shows]);
}

/** Types what the cell holds, and what the cells around it do, and selects it. */
export async function onCellIn(
  sheet: Workbench,
  { around = {}, content, shows }: ExplainedCell,
  use: (host: Explaining) => Promise<void>,
): Promise<void> {
  for (const [at, text] of Object.entries(around)) await enterShown(sheet, at, text, text);
  await enterShown(sheet, AT, content, shows);
  await sheet.click(AT);
  await use({ page: sheet.page, within: '#pane' });
}
