import { describe, expect, it } from 'vitest';
import { NAMESPACE } from '../../src/catalogue';
import { PLAIN_FUNCTIONS } from '../../src/catalogue/plain';
import { allInOneWorkbook } from './onePage';
import { leave, lines, names, OURS, oursWith, typed } from './suggested';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (found: Workbench): void => {
  sheet = found;
};

describe('what is offered while a formula is typed', () => {
  allInOneWorkbook(take);

  it('is ours by the beginning of their names without the namespace, then by any part', async () => {
    const offered = await names(await typed(sheet, 'H20', '=STOP'));
    const begin = OURS.filter((name) => name.startsWith(`${NAMESPACE}.STOP`));
    expect(begin).toContain(`${NAMESPACE}.STOPDIFF`);
    expect(offered.slice(0, begin.length)).toEqual(begin);
    expect([...offered].sort()).toEqual(oursWith('STOP').sort());
    await leave(sheet);
  });

  it('is of one letter no list of all of ours', async () => {
    const offered = await names(await typed(sheet, 'H21', '=s'));
    const begin = OURS.filter((name) => name.startsWith(`${NAMESPACE}.S`));
    expect(offered.slice(0, begin.length)).toEqual(begin);
    expect(offered.indexOf('SUM')).toBeGreaterThan(0);
    expect(offered.indexOf('SUM')).toBeLessThan(offered.indexOf('SWEEP.FALLSPEED'));
    await leave(sheet);
  });

  it('explains plain functions in words, and offers none that it does not explain', async () => {
    const entries = await typed(sheet, 'H21', '=SU');
    const offered = await names(entries);
    const plain = PLAIN_FUNCTIONS.map(({ name }) => name).filter((name) => name.startsWith('SU'));
    expect(plain.slice(0, 3)).toContain('SUM');
    expect(offered.slice(0, plain.length)).toEqual([...plain].sort());
    expect(offered.slice(plain.length).every((name) => name.startsWith(NAMESPACE))).toBe(true);
    const said = await lines(entries);
    expect(said[offered.indexOf('SUM')]).toBe('Numbers added up.');
    for (const [i, line] of said.entries()) expect(line, offered[i]).toMatch(/^[A-Z][^.]* \S/);
    expect(said.filter((line) => line.includes('functionList'))).toEqual([]);
    await leave(sheet);
  });

  it('names the arguments of a plain function, with a line for each', async () => {
    await sheet.click('H23');
    await sheet.page.keyboard.type('=ROUND(1.25,');
    const help = sheet.page.locator('[data-u-comp="rect-popup"]', { hasText: 'ROUND(' });
    const inHand = help.locator('.univer-my-2:has(> .univer-text-primary-500)');
    await expect
      .poll(() => inHand.textContent())
      .toMatch(/^digits.*Digits behind the point; -1 rounds to tens\./);
    expect(await help.innerText()).toContain('ROUND(number,digits)');
    expect(await help.textContent()).not.toContain('functionList');
    await leave(sheet);
  });
});
