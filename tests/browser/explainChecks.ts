import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFaults, LOOKS, openAll, stickingOut, tab } from './paneChecks';

/** A cell to explain. What it shows is given only for hosts that calculate nothing themselves: the others must agree. */
export interface ExplainedCell {
  readonly what: string;
  /** Whether there are steps to show. */
  readonly isSteps: boolean;
  /** What the cells around it hold, by address. */
  readonly around?: Readonly<Record<string, string>>;
  readonly content: string;
  readonly shows: string;
  /** What the view says of it, in this order. */
  readonly says: readonly string[];
}

export const AT = 'H7';
const INPUT = 'H5';

const CELLS: readonly ExplainedCell[] = [
  {
    what: 'a formula: its function, what was read, the formula with the numbers, the answer and the source',
    isSteps: true,
    content: '=SWEEP.STOPDIFF(8,11)',
    shows: '1',
    says: [
      '=SWEEP.STOPDIFF(8,11)',
      'STOPDIFF',
      'Stops from one value up to another.',
      'the mark f/8',
      'the mark f/11, 11.31',
      'apertures: 2 · log2(to / from)',
      // From f/8 = √2⁶ to f/11 = √2⁷.
      '2 · log2(11.31 / 8)',
      '1 stop',
      'Published: F-number',
    ],
  },
  {
    what: 'a formula within another, from the inside out',
    isSteps: true,
    around: { [INPUT]: '11' },
    content: `=IF(${INPUT}="","",SWEEP.STOPDIFF(8,SWEEP.FNUMBER(${INPUT},3)))`,
    // A stop to f/11, and three tenths beyond it.
    shows: '1.3',
    says: ['IF stands around this', '1. FNUMBER', '2. STOPDIFF', 'f/11 +0.3, 12.55', '1.3 stops'],
  },
  {
    what: 'an error, with the cell that it comes from and what to write instead',
    isSteps: true,
    around: { [INPUT]: 'abc' },
    content: `=SWEEP.STOPDIFF(8,${INPUT})`,
    shows: '#VALUE!',
    says: ['abc not read', '"abc" cannot be read as', 'Write 11'],
  },
  {
    what: 'a formula without a function of ours: nothing',
    isSteps: false,
    content: '=SUM(1,2)',
    shows: '3',
    says: ['This formula has no function of Sweeptable'],
  },
  {
    what: 'a cell that only holds something: nothing',
    isSteps: false,
    content: 'key light',
    shows: 'key light',
    says: ['There is no formula in this cell.'],
  },
];

/** A host with the view open and one cell selected. */
export interface Explaining {
  readonly page: Page;
  /** The part of the page that is ours: all of it unless a spreadsheet stands beside. */
  readonly within?: string;
}
export type OnCell = (cell: ExplainedCell, use: (host: Explaining) => Promise<void>) => Promise<void>;

/** What the view says once it says what the cell shows. */
async function said(page: Page, shows: string): Promise<string> {
  const panel = page.getByRole('tabpanel', { name: 'Explain' });
  await panel.getByRole('heading', { name: `${AT} shows ${shows}`, exact: true }).waitFor();
  await openAll(page);
  return panel.innerText();
}

/** What holds for the view of the selected cell, whatever spreadsheet it stands beside. */
export function checkExplain(onCell: OnCell): void {
  describe('the selected cell', () => {
    it.each(CELLS)('explains $what', async (cell) =>
      onCell(cell, async ({ page }) => {
        await tab(page, 'Explain').click();
        const text = await said(page, cell.shows);
        let from = 0;
        for (const piece of cell.says) {
          const at = text.indexOf(piece, from);
          expect(at, `“${piece}” in:\n${text.slice(from)}`).toBeGreaterThanOrEqual(0);
          from = at;
        }
        expect(await page.evaluate(stickingOut)).toEqual([]);
      }),
    );
  });
}

/** That everybody can read it, in all colours. */
export function checkExplainAccess(onCell: OnCell): void {
  describe('the selected cell', () => {
    it.each(CELLS.filter(({ isSteps }) => isSteps))('is legible to everybody: $what', async (cell) =>
      onCell(cell, async ({ page, within }) => {
        await tab(page, 'Explain').click();
        await said(page, cell.shows);
        expect(await page.evaluate(stickingOut)).toEqual([]);
        for (const [look, media] of Object.entries(LOOKS)) {
          await page.emulateMedia(media);
          expect(await axeFaults(page, within), look).toEqual([]);
        }
      }),
    );
  });
}
