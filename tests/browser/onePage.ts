import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { type Site, site, Workbench } from './workbench';

/**
 * Gives each test of a file a new workbook, all of them in one page: to start over takes a fraction of a page load. After
 * a test that failed comes a new page.
 */
export function onePage(size: { readonly height?: number }, take: (sheet: Workbench) => void): void {
  let place: Site;
  let sheet: Workbench | undefined;

  beforeAll(async () => {
    place = await site();
  });
  afterAll(() => place?.close());
  beforeEach(async () => {
    await sheet?.page.emulateMedia({ colorScheme: null, forcedColors: null });
    if (sheet) await sheet.startOver();
    else sheet = await Workbench.open(place, size);
    take(sheet);
  });
  afterEach(async ({ task }) => {
    if (!sheet) return;
    const { complaints, page } = sheet;
    if (task.result?.state === 'fail' || complaints.errors.length + complaints.outside.length > 0) {
      sheet = undefined;
      await page.close();
    }
    expect(complaints).toEqual({ errors: [], outside: [] });
  });
}
