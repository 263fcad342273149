const fs = require('node:fs');
const path = require('node:path');
const { transformSync } = require('esbuild');

const SOURCES = path.resolve(__dirname, '..');

/** Scripts by the text they were made from: a build that loads several modules meets most files more than once. */
const scripts = new Map();

function scriptOf(file) {
  const text = fs.readFileSync(file, 'utf8');
  if (!scripts.has(text)) {
    const { code } = transformSync(text, { loader: 'ts', format: 'cjs', target: 'es2022', sourcefile: file });
    scripts.set(text, code);
  }
  return scripts.get(text);
}

/** Loads one of our TypeScript modules at build time: Node 20 cannot strip types itself. Always reads the files anew. */
module.exports = function loadTs(file) {
  const before = require.extensions['.ts'];
  require.extensions['.ts'] = (module, name) => module._compile(scriptOf(name), name);
  try {
    for (const name of Object.keys(require.cache))
      if (name.startsWith(SOURCES) && name.endsWith('.ts')) delete require.cache[name];
    return require(path.resolve(SOURCES, file));
  } finally {
    require.extensions['.ts'] = before;
  }
};
