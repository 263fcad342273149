import { expect, test } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { helpPage } from '../../src/build/help';
import { CATALOGUE } from '../../src/catalogue';
import { functionsJson } from '../../src/hosts/excel/metadata';

const page = helpPage();

const problems = async (text: string): Promise<readonly string[]> => {
  const { errors } = await validateXML({
    xml: { fileName: 'help.html', contents: text },
    normalization: 'format',
  });
  return errors.map(({ message }) => message);
};

test('the help page is well formed, whatever signs the texts hold', async () => {
  expect(await problems(page)).toEqual([]);
  expect(await problems(page.replace('</dl>', ''))).not.toEqual([]);
});

test('every help address leads to a place on the page', () => {
  for (const { helpUrl } of functionsJson(CATALOGUE).functions)
    expect(page).toContain(`<section id="${helpUrl.split('#')[1]}">`);
});

test('the page loads nothing', () => expect(page).not.toMatch(/<script|<link|<img|https?:/));
