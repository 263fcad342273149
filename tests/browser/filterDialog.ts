import type { Workbench } from './workbench';

/** Answers the question which rows shall stay in view: those that show one of some texts in a column. */
export async function filterDialog({ dialog }: Workbench, column: string, ...texts: string[]): Promise<void> {
  await dialog.getByLabel('Column').selectOption(column);
  await dialog.getByRole('button', { name: 'None' }).click();
  for (const text of texts) await dialog.getByRole('checkbox', { name: text, exact: true }).check();
  await dialog.getByRole('button', { name: 'Filter', exact: true }).click();
}
