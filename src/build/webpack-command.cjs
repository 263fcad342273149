const path = require('node:path');
const TerserPlugin = require('terser-webpack-plugin');
const { DefinePlugin, IgnorePlugin, optimize } = require('webpack');
const templates = require('./templates.cjs');

const ROOT = path.resolve(__dirname, '../..');
const DICTIONARY = /^\.\/(?!en-gb)[a-z]{2,3}(-[a-z0-9]+)*-[\w-]{8}\.js$/;

/** The command line in one file, dist/command/command.cjs. */
module.exports = (env = {}, argv = {}) => ({
  name: 'command',
  mode: argv.mode ?? 'production',
  target: 'node20',
  devtool: false,
  context: ROOT,
  entry: { command: path.join(ROOT, 'src/hosts/command/main.ts') },
  output: { path: path.join(ROOT, 'dist/command'), filename: '[name].cjs' },
  resolve: { extensions: ['.ts', '.js'] },
  module: {
    rules: [
      {
        test: /\.ts$/,
        exclude: /node_modules/,
        loader: 'ts-loader',
        options: { transpileOnly: true, onlyCompileBundledFiles: true, compilerOptions: { noEmit: false } },
      },
    ],
  },
  plugins: [
    // The grid offers some seventy hyphenation dictionaries; it asks for one, and fails without that one.
    new IgnorePlugin({
      checkResource: (resource, context) => context.includes('engine-render') && DICTIONARY.test(resource),
    }),
    new DefinePlugin({
      SWEEPTABLE_TEMPLATES: DefinePlugin.runtimeValue(() => JSON.stringify(templates.readTemplates()), {
        contextDependencies: [templates.FOLDER],
      }),
    }),
    new optimize.LimitChunkCountPlugin({ maxChunks: 1 }),
  ],
  optimization: {
    minimizer: [new TerserPlugin({ minify: TerserPlugin.esbuildMinify, extractComments: false })],
  },
  performance: { hints: false },
  cache: {
    type: 'filesystem',
    name: `command-${argv.mode ?? 'production'}`,
    buildDependencies: { config: [__filename] },
  },
});
