import type { Page } from 'playwright-core';
import type { Fake } from './fakeHost';

export type Selected = NonNullable<Parameters<Fake['select']>[0]>;

/** All views. The functions come last, as what they fill the page with makes each later look at it slow. */
export const VIEWS = ['Sheets', 'Explain', 'Functions'] as const;

export const SIMPLE: Selected = { address: 'B7', formula: '=SWEEP.STOPDIFF(8,11)', shown: '1' };
export const NESTED: Selected = {
  address: 'C9',
  formula: '=IF(A1="","",SWEEP.LIGHTSUM(Lights[Reading],SWEEP.FNUMBER(B2,3)))',
  shown: '33.4303',
  known: { A1: [['']], B2: [[11]], 'Lights[Reading]': [[8], ['f/11'], [''], [16], [22]] },
};
export const REFUSED: Selected = {
  address: 'D4',
  formula: '=SWEEP.POPSFORTARGET(D2,"8 2/3",MAX(D1:D3))',
  shown: '#VALUE!',
  known: { D2: [['abc']] },
};
export const BROKEN: Selected = { address: 'D5', formula: '=SWEEP.STOPDIFF(D2,"8 2/3")', shown: '#VALUE!', known: { D2: [['a text that is long and has no place to break: aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa']] } }; // prettier-ignore
export const LONG: Selected = { address: 'E5', formula: '=SWEEP.POPSBUILD({8;11},{4;2},"f/2.8","1/60",2,SWEEP.METERTARGET(22,0,150,300))', shown: '#N/A' }; // prettier-ignore
export const CELLS = [SIMPLE, NESTED, REFUSED, BROKEN, LONG];

/** Gives each view something to show. */
export async function showEverything(page: Page): Promise<void> {
  await page.evaluate((cell) => window.fake.select(cell), NESTED);
}
