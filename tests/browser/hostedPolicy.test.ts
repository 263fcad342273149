import { afterAll, beforeAll, expect, it } from 'vitest';
import { FakeWorkbook } from '../hosts/support/fake-workbook';
import { ExcelPanePages } from './excelPanePage';
import { status } from './paneChecks';

let pages: ExcelPanePages;

beforeAll(async () => {
  pages = await ExcelPanePages.start({ policy: true });
});
afterAll(() => pages?.close());

it('a page with a policy for the hosted library runs it, inserts a sheet, and runs no other script', async () => {
  const workbook = new FakeWorkbook('Sheet1');
  const [page, complaints] = await pages.open({ workbook });
  await page.getByRole('button', { name: 'Insert with the demo job Lights on set', exact: true }).click();
  await expect.poll(() => status(page).innerText()).toMatch('The sheet “Lights on set” is in.');
  expect(complaints).toEqual([]);

  const outcome = await page.evaluate(
    () =>
      new Promise<string>((done) => {
        const script = document.createElement('script');
        script.src = 'https://elsewhere.example/other.js';
        document.addEventListener('securitypolicyviolation', (event) => done(event.violatedDirective));
        script.addEventListener('load', () => done('it ran'));
        document.head.append(script);
      }),
  );
  expect(outcome).toBe('script-src-elem');
});
