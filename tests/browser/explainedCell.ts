import { expect } from 'vitest';
import type { Workbench } from './workbench';

/** The text of the pane's view of the selected cell, once it has a piece of it. */
export async function explained(sheet: Workbench, piece: string): Promise<string> {
  const panel = sheet.pane.getByRole('tabpanel', { name: 'Explain' });
  await expect.poll(() => panel.innerText()).toContain(piece);
  return panel.innerText();
}
