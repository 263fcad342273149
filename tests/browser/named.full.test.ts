import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { pages } from '../../src/build/pages';
import { TEMPLATES } from '../../src/sheets/templates';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { inExcel } from './excelPanePage';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

/*
 * Every button, tab, sheet and key that help, support and README name is looked for in the pages that run: what is renamed there
 * must be renamed here.
 */

let sheet: Workbench;
allInOneWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1900 },
);

const README = readFileSync(resolve(import.meta.dirname, '../../README.md'), 'utf8').replaceAll(/\s+/g, ' ');
const all = (text: string, sign: RegExp): string[] =>
  [...new Set([...text.matchAll(sign)].map(([, name = '']) => name))].sort();

/** What stands on a page to be pressed, chosen or filled in, and what heads it. */
const OFFERED = 'button, summary, label, th, h2, h3, [role=tab], [aria-label], [data-u-command] span';
const offeredOn = (page: Page): Promise<string[]> =>
  page.locator(OFFERED).evaluateAll((found) =>
    found.flatMap((each) => [
      ...(each.textContent?.split(/(?:: )|\n/) ?? []),
      // without what is only heard, as behind the name of a button
      [...each.childNodes].map((node) => (node.nodeType === Node.TEXT_NODE ? node.textContent : '')).join(''),
      each.getAttribute('aria-label') ?? '',
    ]),
  );

/** Each view of a pane, opened once, stays in its page; so does what a function has to say, of which one is opened. */
async function openViews(page: Page): Promise<void> {
  const views = await page.locator('.pane [role=tab]').allInnerTexts();
  for (const view of views)
    // oxlint-disable-next-line no-await-in-loop -- one after the other
    await page.locator('.pane').getByRole('tab', { name: view, exact: true }).click();
  // comes late
  await page.locator('#panel-balance button').first().waitFor({ state: 'attached' });
  await page.locator('.pane').getByRole('tab', { name: 'Functions', exact: true }).click();
  const first = page.locator('.functions details').first();
  await first.locator('summary').first().click();
  await first.getByRole('button').first().waitFor();
}

async function lookAtWorkbench(): Promise<string[]> {
  await sheet.pane.getByRole('button', { name: 'New job', exact: true }).click();
  await expect.poll(() => sheet.sheets()).toHaveLength(4);
  await openViews(sheet.page);
  const feet = await sheet.page.locator('.at-foot button').allTextContents();
  return [...(await offeredOn(sheet.page)), ...feet.map((words) => words.replace(/ .*…$/, '…'))];
}

let here: Promise<string[]> | undefined;
const onWorkbench = (): Promise<string[]> => (here ??= lookAtWorkbench());

async function inExcelsPane(): Promise<string[]> {
  let found: string[] = [];
  await inExcel({ workbook: new FakeWorkbook('Sheet1') }, async (page) => {
    await page.getByRole('button', { name: 'New job', exact: true }).click();
    await page.getByRole('button', { name: 'Take back' }).waitFor();
    const told = await offeredOn(page);
    await openViews(page);
    found = [...told, ...(await offeredOn(page))];
  });
  return found;
}

const SHEETS = TEMPLATES.map(({ name }) => name);
/** Headings and labels that stand on sheets. */
const ON_SHEETS = TEMPLATES.flatMap(({ blocks }) =>
  blocks.flatMap((block) =>
    block.kind === 'form' ? block.fields.map(({ label = '' }) => label) : block.columns.map(({ id }) => id),
  ),
);

describe('what is named', () => {
  it('in help and support of the workbench is there', async () => {
    const { 'help.html': help, 'support.html': support } = pages('workbench');
    const about = help.slice(0, help.indexOf('id="family-'));
    const named = all(about + support, /<b>([^<]+)<\/b>/g);
    expect(named.length).toBeGreaterThan(8);
    const there = new Set([...SHEETS, ...(await onWorkbench())].map((words) => words.trim()));
    expect(named.filter((name) => !there.has(name))).toEqual([]);
  });

  it('in help and support of the add-in is there', async () => {
    const { 'help.html': help, 'support.html': support } = pages('excel');
    const about = help.slice(0, help.indexOf('id="family-'));
    const named = all(about + support, /<b>([^<]+)<\/b>/g);
    expect(named.length).toBeGreaterThan(6);
    // the button on the ribbon, which the manifest has
    const there = new Set(['Sweeptable', ...SHEETS, ...(await inExcelsPane())].map((words) => words.trim()));
    expect(named.filter((name) => !there.has(name))).toEqual([]);
  });

  it('in README is there', async () => {
    const named = all(README, /(?<![\w`])_([A-Z.][^_`]*)_(?!\w)/g);
    expect(named.length).toBeGreaterThan(30);
    const there = new Set(
      [...SHEETS, ...ON_SHEETS, ...(await onWorkbench()), ...(await inExcelsPane())].map((words) =>
        words.trim(),
      ),
    );
    expect(named.filter((name) => !there.has(name))).toEqual([]);
  });
});

const press = (key: string) => sheet.page.keyboard.press(key);
const inView = () => sheet.page.evaluate(() => window.sweeptable.inView());
const focusedIn = (place: string) =>
  expect
    .poll(() => sheet.page.evaluate((at) => document.activeElement?.closest(at) !== null, place))
    .toBe(true);
const closes = async (dialog: Locator): Promise<void> => {
  await dialog.waitFor();
  await press('Escape');
  await dialog.waitFor({ state: 'hidden' });
};

/** What each key must do that help names, in a cell of the table Tally on Pops build. */
const KEYS: Readonly<Record<string, () => Promise<void>>> = {
  'Ctrl+F6': async () => {
    await press('Control+F6');
    await focusedIn('.at-foot');
    await press('Control+F6');
    await focusedIn('#pane');
  },
  'Ctrl+Shift+F6': async () => {
    await press('Control+Shift+F6');
    await focusedIn('#commands');
  },
  'Ctrl+Alt+Page Down, Page Up': async () => {
    await press('Control+Alt+PageDown');
    await expect.poll(inView).toBe('Heads');
    await press('Control+Alt+PageUp');
    await expect.poll(inView).toBe('Pops build');
  },
  'Ctrl+Z, Ctrl+Y': async () => {
    await sheet.enter('G20', '7');
    await press('Control+z');
    await sheet.shows('G20', null);
    await press('Control+y');
    await sheet.shows('G20', 7);
  },
  'Ctrl+F, Ctrl+H': async () => {
    const line = sheet.page.getByRole('search');
    await press('Control+f');
    await closes(line);
    await press('Control+h');
    await closes(line);
  },
  'Ctrl+S': async () => {
    const saved = sheet.page.waitForEvent('download');
    await press('Control+s');
    expect((await saved).suggestedFilename()).toMatch(/\.xlsx$/);
  },
  'Ctrl+P': async () => {
    // a browser asks for a printer here, unless a page forbids it
    await sheet.page.evaluate(() =>
      addEventListener('keydown', ({ defaultPrevented }) => (document.title = `${defaultPrevented}`), {
        once: true,
      }),
    );
    await press('Control+p');
    await expect.poll(() => sheet.page.title()).toBe('false');
  },
  'Alt+Down': async () => {
    // how the dial of the first head is marked
    await sheet.sheet('Heads');
    await sheet.goTo('F45');
    await press('Alt+ArrowDown');
    await closes(sheet.page.locator('[data-u-comp="sheets-dropdown-list"]'));
  },
  'Shift+F10': async () => {
    await press('Shift+F10');
    await focusedIn('.univer-popup');
    await press('Escape');
    await focusedIn('[data-u-comp="editor"]');
  },
  'Ctrl+Alt+Enter': async () => {
    const before = await sheet.tables();
    await press('Control+Alt+Enter');
    await expect.poll(() => sheet.tables()).not.toEqual(before);
    await press('Control+z');
    await expect.poll(() => sheet.tables()).toEqual(before);
  },
  'Ctrl+Alt+S, Ctrl+Alt+F': async () => {
    await press('Control+Alt+s');
    await closes(sheet.dialog);
    await press('Control+Alt+f');
    await closes(sheet.dialog);
  },
  'Ctrl+Alt+5': async () => {
    await press('Control+Alt+5');
    await focusedIn('.charts');
    await press('Escape');
  },
  F1: async () => {
    const coming = sheet.page.context().waitForEvent('page');
    await press('F1');
    const help = await coming;
    await help.getByRole('heading', { name: 'Sweeptable help' }).waitFor();
    await help.close();
  },
  Escape: async () => {
    const [had] = await sheet.texts('B41');
    await sheet.page.keyboard.type('9');
    await press('Escape');
    expect(await sheet.texts('B41')).toEqual([had]);
  },
};

describe('keys', () => {
  const keysOf = (help: string): string[] => {
    const [, rows = ''] = /<th scope="col">Keys<\/th>[\s\S]*?<tbody>([\s\S]*?)<\/tbody>/.exec(help) ?? [];
    return [...rows.matchAll(/<th scope="row">([^<]+)</g)].map(([, key = '']) => key);
  };

  it('do what the help says, all of them', async () => {
    expect(keysOf(pages('workbench')['help.html'])).toEqual(Object.keys(KEYS));
    if ((await sheet.sheets()).length === 1) await onWorkbench();
    for (const act of Object.values(KEYS)) {
      // oxlint-disable-next-line no-await-in-loop -- one key after the other; two clicks on its name would write into that
      if ((await inView()) !== 'Pops build') await sheet.sheet('Pops build');
      // oxlint-disable-next-line no-await-in-loop -- as above
      await sheet.click('B41');
      // oxlint-disable-next-line no-await-in-loop -- as above
      await act();
    }
  });

  it('that README names are those of the help', () => {
    const named = all(README, /(Ctrl(?:\+[A-Z0-9]\w*)+(?: (?:Down|Up))?)/g);
    expect(named.length).toBeGreaterThan(5);
    const known = Object.keys(KEYS).join(', ').split(', ');
    expect(named.filter((key) => !known.includes(key))).toEqual([]);
  });
});
