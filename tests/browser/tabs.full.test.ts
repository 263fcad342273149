import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { LIGHTS, TURN } from './lightsOnSet';
import { ELSEWHERE, says } from './inTwoTabs';
import { isStored } from './stored';
import { visitor, Workbench } from './workbench';

let person: BrowserContext;
let tabs: Workbench[];

beforeEach(async () => {
  person = await visitor();
  tabs = [];
});
afterEach(async () => {
  for (const { complaints } of tabs) expect(complaints).toEqual({ errors: [], outside: [] });
  await person.close();
});

async function openTab(before?: (page: Page) => Promise<unknown>): Promise<Workbench> {
  const tab = await Workbench.open({ of: person, ...(before ? { before } : {}) });
  tabs.push(tab);
  return tab;
}
const keeps = (tab: Workbench, value: number) => isStored(tab.page, 'B6', value);

describe('the workbook in two tabs', () => {
  it('is stored by the first; the second says so, and has the place when the first is closed', async () => {
    const first = await openTab();
    await first.enter('B6', '22');
    await keeps(first, 22);
    const second = await openTab();
    await says(second).toMatch(ELSEWHERE);
    await second.enter('B6', '32');
    await second.shows('B20', 3);
    // Longer than a change waits until it is stored.
    await second.page.waitForTimeout(900);
    const third = await openTab();
    await third.shows('B6', 22);
    await third.page.close();

    await first.page.close({ runBeforeUnload: true });
    await says(second).toBe('');
    await keeps(second, 32);
    await second.reload();
    await second.shows('B6', 32);
    await says(second).toBe('');
  });

  it('comes as the first has left it into a second where nothing was done', async () => {
    const first = await openTab();
    const second = await openTab();
    await says(second).toMatch(ELSEWHERE);
    await first.enter('B6', '32');
    await first.page.close({ runBeforeUnload: true });
    await second.shows('B6', 32);
    await second.shows('B20', 3);
    expect(await second.notice.innerText()).toBe('This is the workbook as the other tab left it.');
    await says(second).toBe('');
  });

  it('is not lost in either where work was done in both', async () => {
    const first = await openTab();
    const second = await openTab();
    await second.enter('B6', '32');
    await first.enter('B6', '22');
    await first.page.close({ runBeforeUnload: true });
    await says(second).toBe('');
    await second.shows('B6', 32);
    await keeps(second, 32);
    await second.reload();
    await second.shows('B6', 32);
    await second.page.getByRole('button', { name: 'Take back' }).click();
    await second.shows('B6', 22);
    await keeps(second, 22);
    await second.reload();
    await second.shows('B6', 22);
  });

  it('is not closed over work in the second without a question', async () => {
    await openTab();
    const second = await openTab();
    await says(second).toMatch(ELSEWHERE);
    const asked: string[] = [];
    second.page.on('dialog', (dialog) => {
      asked.push(dialog.type());
      void dialog.dismiss();
    });
    await second.enter('B6', '32');
    await second.page.close({ runBeforeUnload: true });
    await expect.poll(() => asked).toEqual(['beforeunload']);
    await second.shows('B6', 32);
  });

  it('is stored where the browser has no locks', async () => {
    const noLocks = (page: Page) =>
      page.addInitScript(() => {
        Object.defineProperty(Navigator.prototype, 'locks', { value: undefined });
      });
    const only = await openTab(noLocks);
    await only.enter('B6', '32');
    await keeps(only, 32);
    await only.reload();
    await only.shows('B6', 32);
    await says(only).toBe('');
  });

  it('goes on in the second when asked, and in the first again', async () => {
    const first = await openTab();
    const second = await openTab();
    await first.enter('B6', '32');
    await second.page.getByRole('button', { name: 'Go on here' }).click();
    await second.shows('B6', 32);
    await says(second).toBe('');
    await says(first).toMatch(ELSEWHERE);
    await second.enter('B6', '22');
    await second.shows('B20', 2);
    await first.page.getByRole('button', { name: 'Go on here' }).click();
    await first.shows('B20', 2);
    await says(first).toBe('');
    await says(second).toMatch(ELSEWHERE);
  });
});

describe('a tab that goes', () => {
  /** Opened again, the workbook is whole: what it answers belongs to what was typed. */
  async function foundWhole(): Promise<number> {
    const again = await openTab();
    await says(again).toBe('');
    expect(await again.notice.isVisible()).toBe(false);
    expect(await again.sheets()).toEqual(['Pops build', 'Lights on set']);
    expect(await again.tables()).toEqual({ Build: 'A52:G64', Tally: 'A39:E49', Lights: LIGHTS, Turn: TURN });
    await again.sheet('Pops build');
    const typed = Number((await again.cell('B6')).value);
    const pops: Readonly<Record<number, number>> = { 22: 2, 32: 3, 45: 5 };
    await again.shows('B20', pops[typed]);
    return typed;
  }

  beforeEach(async () => {
    const tab = await openTab();
    await tab.insert('Lights on set');
    await tab.sheet('Pops build');
    await tab.enter('B6', '22');
    await tab.shows('B20', 2);
    await keeps(tab, 22);
    await tab.enter('B6', '32');
  });

  it('by its close button leaves the last change', async () => {
    await tabs[0]?.page.close({ runBeforeUnload: true });
    expect(await foundWhole()).toBe(32);
  });

  it('at once leaves the workbook whole', async () => {
    await tabs[0]?.page.close();
    expect([22, 32]).toContain(await foundWhole());
  });

  it('by a crash while it is stored leaves the workbook whole', async () => {
    const { page } = tabs[0] as Workbench;
    await page.waitForTimeout(520);
    const inspector = await person.newCDPSession(page);
    const crashed = page.waitForEvent('crash');
    // It answers no more.
    void inspector.send('Page.crash').catch(() => {});
    await crashed;
    await page.close();
    expect([22, 32]).toContain(await foundWhole());
  });
});
