import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';

const require = createRequire(import.meta.url);
const { withoutUnused } = require('../../src/build/lean-grid-loader.cjs') as {
  withoutUnused: (source: string, file: string) => Promise<string>;
};
const FILE = require.resolve('@univerjs/engine-render').replace('cjs', 'es');
const source = readFileSync(FILE, 'utf8');

describe('the drawing engine of the grid, as it is built in', () => {
  let lean: string;
  beforeAll(async () => {
    lean = await withoutUnused(source, FILE);
  });

  test('takes in neither font files, nor languages, nor dictionaries, nor tables of Unicode', () => {
    const imported = [...lean.matchAll(/^import .* from "([^"]+)";$/gm)].map(([, name]) => name).sort();
    expect(imported).toEqual([
      '@floating-ui/dom',
      '@floating-ui/utils',
      '@floating-ui/utils/dom',
      '@univerjs/core',
      'rxjs',
    ]);
    expect(lean).not.toContain('import(');
  });

  test('knows the same characters of Chinese, Japanese and Korean', async () => {
    // what the package itself says of every character that a string can hold
    const cjk = (await import(createRequire(FILE).resolve('cjk-regex'))) as Record<
      string,
      () => { toRegExp(): RegExp }
    >;
    const built = new Function(`${/^const constant = .*\nconst cjk = .*$/m.exec(lean)?.[0]}; return cjk;`)();
    for (const name of ['letters', 'all', 'punctuations']) {
      const [ours, theirs] = [built, cjk].map((each) => each[name]().toRegExp() as RegExp);
      const differing = [];
      for (let code = 0; code <= 0x10ffff; code++) {
        const character = String.fromCodePoint(code);
        if (ours?.test(character) !== theirs?.test(character)) differing.push(code.toString(16));
      }
      expect(differing, name).toEqual([]);
    }
    // The Unicode Standard, code charts: 4E00 is a unified ideograph, 30A2 a letter of Katakana, 3002 a full stop.
    const is = (name: string, character: string): boolean => built[name]().toRegExp().test(character);
    expect(['一', 'ア', '。', 'A', '½'].map((each) => is('letters', each))).toEqual([true, true, false, false, false]); // prettier-ignore
    expect(['一', '。', 'A'].map((each) => is('punctuations', each))).toEqual([false, true, false]);
  });
});

describe('the first letter of a text', () => {
  /** The engine's own function as it is built in, with how much of a text it gives to the browser at once. */
  async function built() {
    const lean = await withoutUnused(source, FILE);
    const found = /^function getFirstGrapheme[^]*?^}/m.exec(lean)?.[0];
    const asked: number[] = [];
    const real = new Intl.Segmenter(undefined, { granularity: 'grapheme' });
    const segmenter = {
      segment(text: string) {
        asked.push(text.length);
        return real.segment(text);
      },
    };
    const first = new Function('segmenter', `${found}; return getFirstGrapheme;`)(segmenter) as (
      text: string,
    ) => string | null;
    return { first, asked };
  }

  test.each([
    ['nothing', '', null],
    ['a plain one', 'f', 'f'],
    ['one of a base and a mark', 'e\u0301', 'e\u0301'],
    ['a flag', '🇸🇪', '🇸🇪'],
    ['a family', '👩‍👩‍👧‍👦', '👩‍👩‍👧‍👦'],
    ['one with a hundred marks', `e${'\u0301'.repeat(100)}`, `e${'\u0301'.repeat(100)}`],
  ])('is the same, and found in a few signs of a long text: %s', async (_, letter, first) => {
    const { first: find } = await built();
    expect(find(letter)).toBe(first);
    expect(find(`${letter}${'-f/8'.repeat(8000)}`)).toBe(first ?? '-');
  });

  test('is not looked for in all that follows', async () => {
    const { first, asked } = await built();
    expect(first('f/8'.repeat(10_000))).toBe('f');
    expect(asked).toEqual([]);
    expect(first('光'.repeat(10_000))).toBe('光');
    expect(asked).toEqual([64]);
  });

  test('is that of the browser for two signs of western texts and what may follow them', async () => {
    const { first } = await built();
    const segmenter = new Intl.Segmenter(undefined, { granularity: 'grapheme' });
    const differing: string[] = [];
    for (let one = 0; one < 0x300; one++)
      for (const next of [10, 13, 32, 65, 0xa9, 0xad, 0x2ff, 0x300, 0x36f, 0x600, 0x200d, 0x20e3, 0xfe0f]) {
        const text = String.fromCharCode(one, next);
        if (first(text) !== [...segmenter.segment(text)][0]?.segment) differing.push(text);
      }
    expect(differing).toEqual([]);
  });
});

describe('no build is made with a drawing engine that', () => {
  const changed = (from: string, to: string) => withoutUnused(source.replace(from, to), FILE);

  test.each([
    ['imports more of a font reader', 'import { parse } from "opentype.js";', 'import { parse, load } from "opentype.js";'],
    ['shapes by font files', 'shaping(ctx, content, viewModel, paragraphNode, sectionBreakConfig)', 'shaping(ctx, content, viewModel, paragraphNode, sectionBreakConfig, true)'],
    ['asks for the language elsewhere', 'const segmenter =', 'const language = franc("a");\nconst segmenter ='],
    ['cannot go on without a dictionary', 'if (!loader) return;', ''],
    ['asks for another pattern', 'cjk.all()', 'cjk.kana()'],
    ['gives a pattern flags', 'cjk.all().toRegExp()', 'cjk.all().toRegExp("u")'],
  ])('%s', async (_, from, to) => {
    expect(source).toContain(from);
    await expect(changed(from, to)).rejects.toThrow(/is not as it was: .* stands there \d+ times, not \d+/);
  }); // prettier-ignore
});
