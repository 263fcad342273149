import { describe, expect, it } from 'vitest';
import { axeFaults, checkPaneAccess, LOOKS, tab } from './paneChecks';
import { CELLS, showEverything, VIEWS } from './paneContent';
import { onPane } from './panePage';

checkPaneAccess(['dark', 'forced'], VIEWS, onPane, showEverything);

describe('the look', () => {
  it.each(['dark', 'forced'] as const)('passes the accessibility rules in %s colours', (look) =>
    onPane(async (page) => {
      await page.emulateMedia(LOOKS[look]);
      await tab(page, 'Explain').click();
      for (const cell of [undefined, ...CELLS]) {
        await page.evaluate((selected) => window.fake.select(selected), cell);
        for (const details of await page.locator('#panel-explain summary').all()) await details.click();
        expect(await axeFaults(page)).toEqual([]);
      }
    }),
  );
});
