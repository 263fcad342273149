import { describe, expect, it } from 'vitest';
import { ELSEWHERE, says } from './inTwoTabs';
import { eachItsWorkbook } from './onePage';
import { Workbench } from './workbench';

let first: Workbench;
eachItsWorkbook((fresh) => {
  first = fresh;
});

describe('the workbook in two tabs', () => {
  it('goes on in the second when asked, and in the first again', async () => {
    const second = await Workbench.open({ of: first.page.context() });
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
    expect(second.complaints).toEqual({ errors: [], outside: [] });
    await second.page.close();
  });
});
