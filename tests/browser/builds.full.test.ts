import { expect, it } from 'vitest';
import { buildAddIn } from '../hosts/excel/support/built-add-in';
import { inTurn } from '../full';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { paneAsBuilt } from './excelPanePage';
import { status } from './paneChecks';

it.each(
  inTurn([
    ['a policy for the hosted library', { policy: true }],
    ['an own copy of the library', { officejs: true }],
  ] as const),
)('a page with %s runs it, inserts a sheet, and runs no other script', async (_, env) => {
  const built = await buildAddIn(env);
  const workbook = new FakeWorkbook('Sheet1');
  await paneAsBuilt(built.folder).use(
    { workbook },
    async (page) => {
      await page.getByRole('button', { name: 'Insert with the demo job Lights on set', exact: true }).click();
      await expect.poll(() => status(page).innerText()).toMatch('“Lights on set” is inserted');
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
    },
    undefined,
    // a browser may tell of the request that it forbids
    [expect.stringMatching(/elsewhere\.example.*violates/), 'asked for https://elsewhere.example/other.js'],
  );
  await built.remove();
});
