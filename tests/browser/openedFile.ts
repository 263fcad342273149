import { expect } from 'vitest';
import { downloaded } from './downloaded';
import type { Workbench } from './workbench';

type File = string | { name: string; mimeType: string; buffer: Buffer };

export async function choose(sheet: Workbench, file: File): Promise<void> {
  const [chooser] = await Promise.all([sheet.page.waitForEvent('filechooser'), sheet.command('Open .xlsx')]);
  await chooser.setFiles(file);
}

/** Opens a file as a person does; a buffer is a file from elsewhere. */
export async function open(sheet: Workbench, file: string | Buffer): Promise<void> {
  await choose(sheet, typeof file === 'string' ? file : { name: 'in.xlsx', mimeType: '', buffer: file });
  await sheet.dialog.getByRole('button', { name: 'Open', exact: true }).click();
  await expect.poll(() => sheet.notice.innerText()).toMatch(/is open/);
}

/** Saves the workbook as a person does. */
export async function saved(sheet: Workbench): Promise<Buffer> {
  const [download] = await Promise.all([sheet.page.waitForEvent('download'), sheet.command('Save as .xlsx')]);
  return downloaded(download);
}
