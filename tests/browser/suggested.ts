import type { Locator } from 'playwright-core';
import { CATALOGUE, NAMESPACE } from '../../src/catalogue';
import type { Workbench } from './workbench';

export const OURS = CATALOGUE.map(({ id }) => `${NAMESPACE}.${id}`);
export const oursWith = (part: string): string[] => OURS.filter((name) => name.includes(part));
/** The name of what the list says of a function is the first line of its entry, and the line below what it gives. */
export const names = (entries: Locator): Promise<string[]> =>
  entries.locator('> span:first-child').allInnerTexts();
export const lines = (entries: Locator): Promise<string[]> =>
  entries.locator('> span:last-child').allInnerTexts();

export async function typed(sheet: Workbench, cell: string, text: string): Promise<Locator> {
  await sheet.click(cell);
  await sheet.page.keyboard.type(text);
  const entries = sheet.page.locator('[data-u-comp="sheets-formula-editor"] li');
  await entries.first().waitFor();
  return entries;
}

export async function leave(sheet: Workbench): Promise<void> {
  await sheet.page.keyboard.press('Escape');
  await sheet.page.keyboard.press('Escape');
}
