import { describe, expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import { leave, names, OURS, oursWith, typed } from './suggested';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (found: Workbench): void => {
  sheet = found;
};

describe('what is offered while a formula is typed', () => {
  allInOneWorkbook(take);

  it('is ours first, then the plain ones', async () => {
    const offered = await names(await typed(sheet, 'H20', '=SW'));
    expect(offered).toEqual([...OURS, 'SWITCH']);
    await leave(sheet);
  });

  it('is ours in small letters, and Enter takes it', async () => {
    const offered = await names(await typed(sheet, 'H20', '=pops'));
    expect(offered[0]).toBe('SWEEP.POPSFORTARGET');
    expect([...offered].sort()).toEqual(oursWith('POPS').sort());
    await sheet.page.keyboard.press('Enter');
    // The grid writes the name into the cell a moment later, and puts the caret behind it.
    const help = sheet.page.locator('[data-u-comp="rect-popup"]', { hasText: 'SWEEP.POPSFORTARGET(' });
    await expect.poll(() => help.locator('.univer-my-2:has(> .univer-text-primary-500)').count()).toBe(1);
    await sheet.page.keyboard.type('16,45)');
    await sheet.page.keyboard.press('Enter');
    await expect.poll(async () => (await sheet.cell('H20')).formula).toBe('=SWEEP.POPSFORTARGET(16,45)');
  });
});

describe('a comma in a number and a semicolon between arguments', () => {
  allInOneWorkbook(take);

  it('are refused in a sentence that says what to write', async () => {
    await sheet.enterDown('H9', ['=SUM(1;2)', '=1,5*2']);
    const says = /write a point in numbers.* commas only between arguments/;
    await sheet.refuses('H9', '#VALUE!', /write a comma there, and a point in numbers/);
    await sheet.refuses('H10', '#VALUE!', says);
    await sheet.hover('H10');
    await expect.poll(() => sheet.page.locator('.tip').innerText()).toMatch(says);
  });
});
