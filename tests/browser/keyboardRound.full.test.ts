import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

/** More keys than it may take to get anywhere: further on the keyboard is trapped. */
const MOST_KEYS = 60;

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

const press = (key: string) => sheet.page.keyboard.press(key);
const inView = () => sheet.page.evaluate(() => window.sweeptable.inView());
const selected = () => sheet.page.evaluate(() => window.sweeptable.selected());

/** What has the keyboard: in which part of the page, what it is called, and whether that can be seen. The cells have a frame of their own. */
const focused = () =>
  sheet.page.evaluate(() => {
    const element = document.activeElement as HTMLElement;
    const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(element);
    const { width, height, right, bottom } = element.getBoundingClientRect();
    const isInSight = width > 0 && height > 0 && right > 0 && bottom > 0;
    const hasRing =
      outlineStyle !== 'none' && parseFloat(outlineWidth) >= 1 && !/^rgba.* 0\)$/.test(outlineColor);
    return {
      part: element.closest('#commands, #grid, #pane')?.id ?? element.closest('[id^=__editor]')?.id ?? 'page',
      name: (element.getAttribute('aria-label') ?? element.textContent).trim(),
      isCells: element.isContentEditable,
      isShown: isInSight && hasRing,
    };
  });
type Focused = Awaited<ReturnType<typeof focused>>;

/** Presses a key until the keyboard is where it is wanted; each stop before must show that it is there. */
async function until(key: string, isThere: (now: Focused) => boolean): Promise<Focused[]> {
  const stops: Focused[] = [];
  for (let i = 0; i < MOST_KEYS; i++) {
    // oxlint-disable-next-line no-await-in-loop -- one key after the other
    await press(key);
    // oxlint-disable-next-line no-await-in-loop -- as above
    const now = await focused();
    if (!now.isCells) expect(now, `${key}, ${i + 1} times`).toMatchObject({ isShown: true });
    stops.push(now);
    if (isThere(now)) return stops;
  }
  throw new Error(`${key} leads only to ${stops.map(({ name }) => name).join(', ')}`);
}

async function typeLine(text: string, end = 'Enter'): Promise<void> {
  await sheet.page.keyboard.type(text);
  await press(end);
}

async function nextSheet(name: string): Promise<void> {
  await press('Control+Alt+PageDown');
  await expect.poll(inView).toBe(name);
}

it('leads from New job to a printed card, and nowhere without showing where it is', async () => {
  const { page } = sheet;
  await sheet.click('B5');
  await until('Control+F6', ({ name }) => name === 'Sheets');
  await until('Tab', ({ name }) => name === 'New job');
  await press('Enter');
  await expect.poll(selected).toBe('A44');
  expect(await inView()).toBe('Heads');
  // the cell to begin at is in sight, with the headings above it, below the rows that stay
  // its table ends in sight, below its headings
  const foot = page.getByRole('button', { name: 'Add a row to Models' });
  const y = async () => (await foot.boundingBox())?.y ?? Infinity;
  await expect.poll(y).toBeLessThan(500);
  expect(await y()).toBeGreaterThan(300);
  await typeLine('Slate 600');

  await nextSheet('Pops plan');
  const before = await sheet.texts('B16', 'C16', 'D16', 'E16');
  await press('ArrowLeft');
  for (let row = 5; row < 65; row++)
    // oxlint-disable-next-line no-await-in-loop -- one key after the other
    await press('ArrowDown');
  await expect.poll(selected).toBe('A65');
  // the head of the first light, with another reading: a stop less than the 16 and 5 tenths of the demo job
  await typeLine('Slate 600', 'Tab');
  for (const key of ['Tab', 'Tab'])
    // oxlint-disable-next-line no-await-in-loop -- as above
    await press(key);
  await typeLine('11', 'Tab');
  await typeLine('5');
  await sheet.shows('D65', 11);
  await expect.poll(() => sheet.texts('B16', 'C16', 'D16', 'E16')).not.toEqual(before);
  await expect.poll(async () => (await sheet.cell('A16')).text).toBe('key: Slate 600');
  const set = await sheet.texts('B16', 'C16', 'D16', 'E16');

  await nextSheet('Set card');
  await expect.poll(selected).toBe('B5');
  await typeLine('Blue jug, 1');
  await expect.poll(() => sheet.texts('A21', 'B21', 'C21', 'D21', 'E21')).toEqual(['key: Slate 600', ...set]);

  // what the browser is given to print, as it makes pages of it
  await page.evaluate(() => {
    const keep = (): void => {
      const paper = document.querySelector<HTMLElement>('.paper');
      Object.assign(document.documentElement.dataset, {
        printed: paper?.innerText,
        pages: paper?.querySelectorAll('section').length,
      });
    };
    addEventListener('beforeprint', keep, { once: true });
  });
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  const pages = await page.evaluate(() => document.documentElement.dataset['pages']);
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(Number(pages));
  const printed = await page.evaluate(() => document.documentElement.dataset['printed'] ?? '');
  for (const words of ['Blue jug, 1', 'key: Slate 600', ...set]) expect(printed).toContain(words);
});

it('reaches the bar and the tools from the cells, all of the pane, and comes back', async () => {
  await sheet.click('B5');
  await press('Control+Shift+F6');
  expect(await focused()).toMatchObject({ part: 'commands', isShown: true });
  const tools = await until('Tab', ({ isCells }) => isCells);
  expect(tools.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['Open .xlsx', 'Save as .xlsx', 'Start over', 'Sheets and functions']),
  );
  await press('Control+Shift+F6');
  await press('Control+Shift+F6');
  expect(await focused()).toMatchObject({ isCells: true });
  await until('Control+F6', ({ name }) => name === 'Sheets');
  const all = await until('Tab', ({ name }) => name === 'Licences');
  expect(all.map(({ part }) => part)).toEqual(all.map(() => 'pane'));
  expect(all.slice(-5).map(({ name }) => name)).toEqual([
    'Take care: charge, heat, flashes, wiring',
    'Help',
    'Support',
    'Privacy',
    'Licences',
  ]);
  await press('Control+F6');
  await typeLine('32');
  await sheet.shows('B5', 32);
});
