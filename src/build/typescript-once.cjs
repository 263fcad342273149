const ts = require('typescript');

/** By text and all that it depends on. */
const scripts = new Map();

/**
 * TypeScript for ts-loader: most of our files stand in several of the builds, and some in two layers of one. Each is turned
 * into a script once.
 */
module.exports = {
  ...ts,
  transpileModule(text, given) {
    const { compilerOptions, fileName } = given;
    const key = JSON.stringify([fileName, compilerOptions, text]);
    if (!scripts.has(key)) scripts.set(key, ts.transpileModule(text, given));
    return scripts.get(key);
  },
};
