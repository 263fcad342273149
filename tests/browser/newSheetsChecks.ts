import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFaults, status, stickingOut, tab } from './paneChecks';

/** A spreadsheet with the pane beside it, and one sheet in it. */
export interface SheetsHost {
  readonly page: Page;
  /** The part of the page that is ours: all of it unless a spreadsheet stands beside. */
  readonly within?: string;
  sheets(): Promise<readonly string[]>;
  /** Types into a cell of the sheet in view. */
  type(a1: string, text: string): Promise<void>;
  /** A cell of the sheet in view: its formula, empty where it has none, and its value. */
  cell(a1: string): Promise<{ readonly formula: string; readonly value: unknown }>;
}
export type OnHost = (use: (host: SheetsHost) => Promise<void>) => Promise<void>;

const NAME = 'Lights on set';
/** A cell of it that holds a formula, and one that is typed in. */
const ANSWER = 'O33';
const INPUT = 'B6';

const said = ({ page }: SheetsHost) => expect.poll(() => status(page).innerText(), { timeout: 20_000 });
const press = ({ page }: SheetsHost, name: string) => page.getByRole('button', { name, exact: true }).click();
const takeBack = (host: SheetsHost) => press(host, 'Take back');

async function insert(host: SheetsHost): Promise<void> {
  await tab(host.page, 'Sheets').click();
  await press(host, `Insert with the demo job ${NAME}`);
  await said(host).toMatch(`“${NAME}” is inserted with the demo job. Start in B5.`);
}

/** What holds for sheets that come in from the pane, whatever spreadsheet it stands beside. */
export function checkTakingBack(on: OnHost): void {
  describe('a sheet that came in', () => {
    it('is taken back from the pane', () =>
      on(async (host) => {
        const before = await host.sheets();
        await insert(host);
        expect(await host.sheets()).toEqual([...before, NAME]);
        await takeBack(host);
        await said(host).toMatch(`“${NAME}” is taken away again.`);
        expect(await host.sheets()).toEqual(before);
        expect(await host.page.getByRole('button', { name: 'Take back' }).count()).toBe(0);
      }));

    it('stays where something on it has changed, and the pane says so', () =>
      on(async (host) => {
        await insert(host);
        const after = await host.sheets();
        await host.type(INPUT, '16');
        await takeBack(host);
        await said(host).toBe(
          `Not done. “${NAME}” has changed since it came in, so the sheet was left as it is. If you do not need it, delete it by its tab.`,
        );
        expect(await host.sheets()).toEqual(after);
        expect((await host.cell(INPUT)).value).toBe(16);
      }));
  });
}

/** What holds for copies of them. */
export function checkCopyAsValues(on: OnHost): void {
  describe('a copy as values', () => {
    it('has values in the place of formulas, and is taken back from the pane', () =>
      on(async (host) => {
        await insert(host);
        await expect.poll(async () => (await host.cell(ANSWER)).value).toBeTypeOf('number');
        const [answer, typed, before] = [
          await host.cell(ANSWER),
          await host.cell(INPUT),
          await host.sheets(),
        ];
        expect(answer.formula).not.toBe('');
        await press(host, 'Copy this sheet as values');
        await said(host).toMatch(
          `“${NAME} values” holds the values as they are now, without formulas. Looks, charts and print set-up came along.`,
        );
        expect(await host.sheets()).toEqual([...before, `${NAME} values`]);
        expect(await host.cell(ANSWER)).toEqual({ formula: '', value: answer.value });
        expect(await host.cell(INPUT)).toEqual(typed);
        await takeBack(host);
        await said(host).toMatch(`“${NAME} values” is taken away again.`);
        expect(await host.sheets()).toEqual(before);
      }));
  });
}

/** What holds for the offer to take it back. */
export function checkOfferToTakeBack(on: OnHost): void {
  describe('a sheet that came in', () => {
    it('is offered back by a button that the keyboard keeps, and that fits and is legible', () =>
      on(async (host) => {
        await insert(host);
        expect(await host.page.evaluate(stickingOut)).toEqual([]);
        expect(await axeFaults(host.page, host.within)).toEqual([]);
        await host.page.getByRole('button', { name: 'Take back' }).focus();
        await host.page.keyboard.press('Enter');
        await said(host).toMatch(`“${NAME}” is taken away again.`);
        const focused = () => host.page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
        expect(await focused()).toBe('Close this message');
      }));

    it('is no longer offered back once something else is wished', () =>
      on(async (host) => {
        await insert(host);
        await tab(host.page, 'Functions').click();
        expect(await host.page.getByRole('button', { name: 'Take back' }).count()).toBe(0);
      }));
  });
}

const PAGES = ['Help', 'Support', 'Privacy', 'Licences'];

/** What holds for a whole job that comes in from the pane, and for the pages of words that a newcomer looks for. */
export function checkNewJob(on: OnHost): void {
  it('a new job comes in linked and goes in one step, and the pages of words are in reach', () =>
    on(async (host) => {
      const before = await host.sheets();
      await press(host, 'New job');
      await said(host).toMatch(
        'First type your heads over those in “Heads”, from A44 on, then their names over those in “Pops plan”.',
      );
      expect(await host.sheets()).toEqual([...before, 'Heads', 'Pops plan', 'Set card']);
      await takeBack(host);
      await said(host).toMatch('The sheets of the new job are taken away again.');
      expect(await host.sheets()).toEqual(before);

      for (const name of PAGES) {
        const link = host.page.getByRole('link', { name, exact: true });
        expect(await link.isVisible()).toBe(true);
        const text = await link.evaluate(async (to) => (await fetch((to as HTMLAnchorElement).href)).text());
        expect(text.toLowerCase()).toContain(
          name === 'Licences' ? 'mit license' : `sweeptable ${name.toLowerCase()}`,
        );
      }
    }));
}
