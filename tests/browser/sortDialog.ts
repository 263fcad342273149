import type { Workbench } from './workbench';

/** Answers the question by what rows are to be sorted, and how. */
export async function sortDialog({ dialog }: Workbench, by: string, order: string): Promise<void> {
  await dialog.getByLabel('By').selectOption(by);
  await dialog.getByLabel('Order').selectOption(order);
  await dialog.getByRole('button', { name: 'Sort' }).click();
}
