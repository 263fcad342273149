import { describe, expect, it } from 'vitest';
import { axeFaults, checkPaneAccess, CONTRAST, LOOKS, openAll, summaryOf, tab } from './paneChecks';
import { CELLS, REFUSED, showEverything, VIEWS } from './paneContent';
import { onPane } from './panePage';

checkPaneAccess(['dark', 'forced'], VIEWS, onPane, showEverything);

describe('the pane', () => {
  it.each(['dark', 'forced'] as const)('has enough contrast in %s colours', (look) =>
    onPane(async (page) => {
      await page.emulateMedia(LOOKS[look]);
      await showEverything(page);
      await page.evaluate((cell) => window.fake.select(cell), REFUSED);
      for (const name of VIEWS) {
        await tab(page, name).click();
        // All functions look alike: one of them open stands for all.
        if (name === 'Functions') await summaryOf(page, 'POPSFORTARGET').click();
        else await openAll(page);
        expect(await axeFaults(page, 'html', CONTRAST), name).toEqual([]);
      }
    }),
  );
});

describe('the look', () => {
  it.each(['light', 'dark', 'forced'] as const)('passes the accessibility rules in %s colours', (look) =>
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
