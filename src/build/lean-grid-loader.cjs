const { createRequire } = require('node:module');
const { pathToFileURL } = require('node:url');

/** The file that this is about. */
const DRAWING_ENGINE = /@univerjs[\\/]engine-render[\\/]lib[\\/]es[\\/]index\.js$/;

/**
 * What the drawing engine of the grid brings along and has no use for in a sheet, and what is too slow for it: what stands in its text, what is put in
 * that place, and, for what rests on no other line using it, how often other words may stand there. Looked through in
 * @univerjs/engine-render 0.25.1, with opentype.js 2.0.0, franc-min 6.2.0 and cjk-regex 3.5.0 on unicode-regex 4.3.0.
 */
const cuts = (patterns) => [
  {
    // Reads font files that the page may look into. `parse` is called by `shapeChunk` alone, that by `textShape`, and that by
    // `shaping` if its sixth argument says so: its one caller gives five.
    stands: 'import { parse } from "opentype.js";\n',
    by: 'const parse = () => { throw new Error("Font files are not read here."); };\n',
    words: [
      [/opentype\.js/g, 1],
      [/(?<![.\w])parse\(/g, 1],
      [/\btextShape\(/g, 2],
      [/\bshaping\(/g, 2],
      [/\bshaping\(ctx, content, viewModel, paragraphNode, sectionBreakConfig\)/g, 1],
    ],
  },
  {
    // Guesses the language of a text, of which only the dictionary for hyphens is chosen. Documents ask for hyphens by
    // `autoHyphenation`; no cell and no editor of a sheet does. Of "und" the engine makes no language, and no hyphens.
    stands: 'import { franc } from "franc-min";\n',
    by: 'const franc = () => "und";\n',
    words: [
      [/\bfranc\b/g, 3],
      [/\bund: "unknown"/g, 1],
      [/\blanguageDetector\.detect\(/g, 1],
      [/\bif \(lang !== "unknown" && needHyphen\) if \(hyphen\.hasPattern\(lang\)\)/g, 1],
    ],
  },
  {
    // Those dictionaries: where none can be loaded the engine goes on without.
    stands: /\t\["[\w-]+"\]: \(\) => import\("\.\/[\w-]+\.js"\),?\n/g,
    times: 77,
    by: '',
    words: [
      [/\bimport\(/g, 77],
      [/const loader = PATTERN_LOADERS\[lang\];\s+if \(!loader\) return;/g, 1],
    ],
  },
  {
    // Three patterns, made at each start from tables of all of Unicode: here they are made once.
    stands: 'import * as cjk from "cjk-regex";\n',
    by: `const constant = (pattern) => () => ({ toRegExp: () => new RegExp(pattern) });
const cjk = { ${patterns.map(([name, source]) => `${name}: constant(${JSON.stringify(source)})`).join(', ')} };
`,
    words: [
      [/\bcjk\b/g, 2 + patterns.length],
      ...patterns.map(([name]) => [new RegExp(`\\bcjk\\.${name}\\(\\)\\.toRegExp\\(\\)`, 'g'), 1]),
    ],
  },
  {
    // Finds the first letter, of all signs that make one, and is asked for each of a text in turn with all that follows it: the
    // browser goes through all of that each time. Below U+0300 no two signs make one letter but a line's end; of other texts few
    // signs are enough, unless one letter is as long as they are.
    stands: 'function getFirstGrapheme(text) {\n',
    by: `function getFirstGrapheme(text) {
	if (text.charCodeAt(0) >= 32 && text.charCodeAt(0) < 768 && !(text.charCodeAt(1) >= 768)) return text[0];
	if (text.length > 64) {
		const first = getFirstGrapheme(text.slice(0, 64));
		if (first.length < 64) return first;
	}
`,
    words: [
      [/\bgetFirstGrapheme\(/g, 4],
      [/\bsegmenter\.segment\(/g, 1],
      [/content\.substring\(start\)/g, 1],
    ],
  },
  {
    // Breaks a word that is wider than its line, and calls itself for what is left of it: of a word of thousands of letters in a
    // narrow column that is deeper than the browser goes. Such a word is set letter by letter.
    stands:
      'function _divideOperator(ctx, glyphGroup, pages, sectionBreakConfig, paragraphConfig, isParagraphFirstShapedText, breakPointType = "Normal", defaultSpanLineHeight) {\n',
    by: `function _divideOperator(ctx, glyphGroup, pages, sectionBreakConfig, paragraphConfig, isParagraphFirstShapedText, breakPointType = "Normal", defaultSpanLineHeight) {
	if (glyphGroup.length > 1000) {
		for (const [at, glyph] of glyphGroup.entries())
			_divideOperator(ctx, [glyph], pages, sectionBreakConfig, paragraphConfig, at === 0 && isParagraphFirstShapedText, breakPointType, defaultSpanLineHeight);
		return;
	}
`,
    words: [[/\b_divideOperator\(/g, 10]],
  },
];

const PATTERNS = ['letters', 'all', 'punctuations'];

/** The package that makes the patterns, as the drawing engine's file finds it, and those that it makes them with. */
function patternMakers(file) {
  const cjk = createRequire(file).resolve('cjk-regex');
  return [cjk, ...['unicode-regex', 'regexp-util'].map((name) => createRequire(cjk).resolve(name))];
}

async function patternsBy(maker) {
  const cjk = await import(pathToFileURL(maker).href);
  return PATTERNS.map((name) => [name, cjk[name]().toRegExp().source]);
}

/** The drawing engine without all that. Throws where it no longer reads as it did when that was found to be safe. */
async function withoutUnused(source, file) {
  const all = cuts(await patternsBy(patternMakers(file)[0]));
  for (const [word, count] of all.flatMap(({ stands, times = 1, words }) => [[stands, times], ...words])) {
    const found = source.split(word).length - 1;
    if (found !== count)
      throw new Error(
        `${file} is not as it was: ${String(word).trim()} stands there ${found} times, not ${count}. See lean-grid-loader.cjs.`,
      );
  }
  return all.reduce((text, { stands, by }) => text.replace(stands, () => by), source);
}

/** For webpack. */
module.exports = function leanGrid(source) {
  const done = this.async();
  // The patterns are the work of these: their licences go along.
  this._module.buildInfo.madeBy = patternMakers(this.resourcePath);
  withoutUnused(source, this.resourcePath).then((text) => done(null, text), done);
};
module.exports.withoutUnused = withoutUnused;
module.exports.leanGrid = { test: DRAWING_ENGINE, loader: __filename };
