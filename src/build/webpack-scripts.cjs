const path = require('node:path');
const Terser = require('terser-webpack-plugin');
const { Compilation, sources } = require('webpack');
const loadTs = require('./load-ts.cjs');
const { ROOT, common, typescript } = require('./webpack-parts.cjs');

/** What the script engines of both hosts are sure to read. */
const LANGUAGE = 'es2019';
const BUNDLE = 'bundle.js';

/** Turns the finished bundle into one file for each host that takes scripts: the bundle, then a wrapper a function. */
class ScriptHosts {
  apply(compiler) {
    compiler.hooks.thisCompilation.tap('ScriptHosts', (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_SUMMARIZE;
      compilation.hooks.processAssets.tap({ name: 'ScriptHosts', stage }, () => {
        const bundle = compilation.getAsset(BUNDLE).source.source().toString();
        const { googleSheets, onlyOffice } = loadTs('build/script-hosts.ts');
        // small already, and its names and comments are what the hosts read: the minimizer keeps away
        const emit = (name, text) =>
          compilation.emitAsset(name, new sources.RawSource(`${text}\n`), { minimized: true });
        emit('google-sheets.js', googleSheets(bundle));
        emit('onlyoffice.js', onlyOffice(bundle));
        compilation.deleteAsset(BUNDLE);
      });
    });
  }
}

/** The same functions for Google Sheets and ONLYOFFICE, in dist/scripts/. */
module.exports = (_env = {}, argv = {}) => ({
  ...common('scripts', argv.mode),
  target: ['web', LANGUAGE],
  entry: { bundle: { import: './src/hosts/script/call.ts', library: { name: 'Sweeptable', type: 'var' } } },
  output: { path: path.join(ROOT, 'dist/scripts'), filename: '[name].js', clean: true },
  module: { rules: [typescript({ target: LANGUAGE })] },
  optimization: {
    minimizer: [new Terser({ minify: Terser.esbuildMinify, terserOptions: { target: LANGUAGE } })],
  },
  plugins: [new ScriptHosts()],
});
