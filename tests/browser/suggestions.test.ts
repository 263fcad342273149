import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { CATALOGUE, NAMESPACE } from '../../src/catalogue';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (found: Workbench): void => {
  sheet = found;
};

const OURS = CATALOGUE.map(({ id }) => `${NAMESPACE}.${id}`);
const oursWith = (part: string): string[] => OURS.filter((name) => name.includes(part));
/** The name of what the list says of a function is the first line of its entry, and the line below what it gives. */
const names = (entries: Locator): Promise<string[]> => entries.locator('> span:first-child').allInnerTexts();
const lines = (entries: Locator): Promise<string[]> => entries.locator('> span:last-child').allInnerTexts();

async function typed(cell: string, text: string): Promise<Locator> {
  await sheet.click(cell);
  await sheet.page.keyboard.type(text);
  const entries = sheet.page.locator('[data-u-comp="sheets-formula-editor"] li');
  await entries.first().waitFor();
  return entries;
}

async function leave(): Promise<void> {
  await sheet.page.keyboard.press('Escape');
  await sheet.page.keyboard.press('Escape');
}

describe('what is offered while a formula is typed', () => {
  allInOneWorkbook(take);

  it('is ours first, then the plain ones', async () => {
    const offered = await names(await typed('H20', '=SW'));
    expect(offered).toEqual([...OURS, 'SWITCH']);
    await leave();
  });

  it('is ours by the beginning of their names without the namespace, then by any part', async () => {
    const offered = await names(await typed('H20', '=STOP'));
    const begin = OURS.filter((name) => name.startsWith(`${NAMESPACE}.STOP`));
    expect(begin).toContain(`${NAMESPACE}.STOPDIFF`);
    expect(offered.slice(0, begin.length)).toEqual(begin);
    expect([...offered].sort()).toEqual(oursWith('STOP').sort());
    await leave();
  });

  it('is ours in small letters, and Enter takes it', async () => {
    const offered = await names(await typed('H20', '=pops'));
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

  it('is of one letter no list of all of ours', async () => {
    const offered = await names(await typed('H21', '=s'));
    const begin = OURS.filter((name) => name.startsWith(`${NAMESPACE}.S`));
    expect(offered.slice(0, begin.length)).toEqual(begin);
    expect(offered.indexOf('SUM')).toBeGreaterThan(0);
    expect(offered.indexOf('SUM')).toBeLessThan(offered.indexOf('SWEEP.FALLSPEED'));
    await leave();
  });

  it('is a plain name first where it stands there whole', async () => {
    const offered = await names(await typed('H21', '=SUM'));
    expect(offered[0]).toBe('SUM');
    expect(offered).toContain('SWEEP.LIGHTSUM');
    await leave();
  });

  it('explains plain functions in words, those of a studio before all others', async () => {
    const entries = await typed('H21', '=SU');
    const offered = await names(entries);
    expect(offered.slice(0, 5)).toEqual(['SUBSTITUTE', 'SUBTOTAL', 'SUM', 'SUMIF', 'SUMIFS']);
    expect(offered.indexOf('SUMX2MY2')).toBeGreaterThan(offered.indexOf('SUMSQ'));
    const said = await lines(entries);
    expect(said[offered.indexOf('SUM')]).toBe('Numbers added up.');
    for (const [i, line] of said.entries()) expect(line, offered[i]).toMatch(/^[A-Z][^.]* \S/);
    expect(said.filter((line) => line.includes('functionList'))).toEqual([]);
    await leave();
  });

  it('leaves out what this grid does not calculate, which its cell says', async () => {
    const offered = await names(await typed('H21', '=REGEX'));
    expect(offered).not.toContain('REGEXTEST');
    expect(offered).toContain('REGEXREPLACE');
    await leave();
    expect(await names(await typed('H21', '=IMA'))).not.toContain('IMAGE');
    await leave();
    await sheet.enter('H22', '=REGEXTEST(A1,"a")');
    await sheet.refuses('H22', '#NAME?', /^This grid has no function REGEXTEST\./);
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
    await leave();
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
