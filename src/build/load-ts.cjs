const fs = require('node:fs');
const path = require('node:path');
const ts = require('typescript');

const SOURCES = path.resolve(__dirname, '..');

/** Loads one of our TypeScript modules at build time: Node 20 cannot strip types itself. Always reads the files anew. */
module.exports = function loadTs(file) {
  const before = require.extensions['.ts'];
  require.extensions['.ts'] = (module, name) => {
    const { outputText } = ts.transpileModule(fs.readFileSync(name, 'utf8'), {
      compilerOptions: { module: ts.ModuleKind.CommonJS, target: ts.ScriptTarget.ES2022 },
      fileName: name,
    });
    module._compile(outputText, name);
  };
  try {
    for (const name of Object.keys(require.cache))
      if (name.startsWith(SOURCES) && name.endsWith('.ts')) delete require.cache[name];
    return require(path.resolve(SOURCES, file));
  } finally {
    require.extensions['.ts'] = before;
  }
};
