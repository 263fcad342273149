import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Download } from 'playwright-core';

/** What a page has handed to the browser's downloads. */
export async function downloaded(download: Download): Promise<Buffer> {
  const folder = await mkdtemp(join(tmpdir(), 'downloaded-'));
  const file = join(folder, 'file');
  try {
    await download.saveAs(file);
    return await readFile(file);
  } finally {
    await rm(folder, { recursive: true });
  }
}
