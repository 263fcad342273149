import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { helpPage } from '../../src/build/helpPage';
import { pages } from '../../src/build/pages';
import { supportPage } from '../../src/build/supportPage';
import { CATALOGUE } from '../../src/catalogue';
import { type Arg, quantitiesOf } from '../../src/catalogue/types';
import { exampleFormula } from '../../src/catalogue/words';
import { functionsJson } from '../../src/hosts/excel/metadata';

const help = helpPage('excel');
const CONTACT = 'Studio <desk> & "loft", extension 41';
const everyPage = (['excel', 'workbench'] as const).flatMap((beside) =>
  Object.entries(pages(beside, CONTACT)).map(([name, page]) => ({ beside, name, page })),
);
const escaped = (plain: string): string =>
  plain.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
const sections = new Map(
  [...help.matchAll(/<section id="([^"]+)">([\s\S]*?)<\/section>/g)].map(([, id, body]) => [id, body ?? '']),
);

const problems = async (text: string): Promise<readonly string[]> => {
  const { errors } = await validateXML({
    xml: { fileName: 'page.html', contents: text },
    normalization: 'format',
  });
  return errors.map(({ message }) => message);
};

describe.each(everyPage)('$name beside $beside', ({ beside, page }) => {
  test('is well formed, whatever signs the texts hold', async () => {
    expect(await problems(page)).toEqual([]);
    expect(await problems(page.replace('</main>', ''))).not.toEqual([]);
  });

  test('loads nothing, and names no address of anybody', () =>
    expect(page).not.toMatch(/<script |<link|<img|<iframe|https?:|(?<!\[)@(?!page|media)/));

  test('runs nothing but what its policy knows by its sum: whether the workbench is dark', () => {
    const scripts = [...page.matchAll(/<script>([^<]*)<\/script>/g)].map(([, script = '']) => script);
    expect(scripts).toHaveLength(beside === 'workbench' ? 1 : 0);
    const sums = scripts.map((script) => createHash('sha256').update(script).digest('base64'));
    const known = [...page.matchAll(/'sha256-([^']*)'/g)].map(([, sum]) => sum);
    expect(known).toEqual(sums);
  });

  test('leads nowhere that is not there', () => {
    // The licences are put beside the pages by the build.
    const all: Readonly<Record<string, string>> = { ...pages(beside), 'licences.txt': 'text' };
    for (const [, link = ''] of page.matchAll(/href="([^"]*)"/g)) {
      const [file, place] = link.split('#');
      const target = file ? all[file] : page;
      expect(target, link).toBeDefined();
      if (place !== undefined) expect(target, link).toContain(` id="${place}"`);
    }
  });

  test('speaks of what it stands beside, and of nothing else', () => {
    const other = { excel: /workbench|Ctrl\+/i, workbench: /Excel|Office|Microsoft|add-in|Recalculate/ };
    expect(page).not.toMatch(other[beside]);
  });

  test('has one place for each name', () => {
    const ids = [...page.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(ids).toEqual([...new Set(ids)]);
  });
});

describe('the help page', () => {
  test('has a section for every function, where Excel’s help leads', () =>
    expect([...sections.keys()]).toEqual(
      functionsJson(CATALOGUE).functions.map(({ helpUrl }) => helpUrl.split('#')[1]),
    ));

  test.each(CATALOGUE.map((row) => [row.id, row] as const))('tells all there is of %s', (id, row) => {
    const section = sections.get(id.toLowerCase()) ?? '';
    for (const words of [row.gives, row.formula, row.notes ?? '', row.caution ?? ''])
      expect(section).toContain(escaped(words));
    for (const arg of row.args as readonly Arg[]) expect(section).toContain(escaped(arg.about));
    for (const shown of row.examples) expect(section).toContain(escaped(exampleFormula(row, shown)));
    expect(section.includes('<strong>Take care.</strong>')).toBe(row.caution !== undefined);
    expect(section.match(/<li>/g)?.length).toBe(row.sources.length);
  });

  test('lists how every kind of value is read', () => {
    const table = /<tbody>[\s\S]*?<\/tbody>/.exec(help)?.[0].replaceAll('\u00a0', ' ') ?? '';
    const kinds = CATALOGUE.flatMap((row) =>
      (row.args as readonly Arg[]).flatMap(({ kind }) => quantitiesOf(kind)),
    );
    for (const form of new Set(kinds.flatMap(({ forms }) => forms))) expect(table).toContain(escaped(form));
  });
});

describe('the support page names who helps', () => {
  test('in words', () =>
    expect(supportPage('excel', 'Studio <desk>')).toContain(
      'In your studio: <strong>Studio &lt;desk&gt;</strong>',
    ));
  test('with a link, where it is an address', () => {
    expect(supportPage('excel', 'desk@studio.example')).toContain('<a href="mailto:desk@studio.example">');
    expect(supportPage('excel', 'https://studio.example/desk')).toContain(
      '<a href="https://studio.example/desk">',
    );
    expect(supportPage('excel', 'javascript:alert(1)')).not.toContain('href="javascript');
  });
  test('or how to find them, where nobody is named', () =>
    expect(supportPage('excel')).toContain('Ask whoever installed Sweeptable in your studio'));
});
