const path = require('node:path');
const { optimize } = require('webpack');
const { leanGrid } = require('./lean-grid-loader.cjs');
const Licences = require('./licences-plugin.cjs');
const { mendedEngine } = require('./mended-engine-loader.cjs');
const { plainFields } = require('./plain-fields-loader.cjs');
const { ROOT, Templates, common, typescript } = require('./webpack-parts.cjs');

/** The command line in one file, dist/command/command.cjs. */
module.exports = (env = {}, argv = {}) => ({
  ...common('command', argv.mode),
  target: 'node20',
  entry: { command: path.join(ROOT, 'src/hosts/command/main.ts') },
  output: { path: path.join(ROOT, 'dist/command'), filename: '[name].cjs' },
  module: { rules: [typescript(), plainFields, leanGrid, mendedEngine] },
  plugins: [new Templates(), new Licences(), new optimize.LimitChunkCountPlugin({ maxChunks: 1 })],
});
