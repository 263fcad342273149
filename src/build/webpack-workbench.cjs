const path = require('node:path');
const HtmlWebpackPlugin = require('html-webpack-plugin');
const MiniCssExtractPlugin = require('mini-css-extract-plugin');
const { leanGrid } = require('./lean-grid-loader.cjs');
const Licences = require('./licences-plugin.cjs');
const loadTs = require('./load-ts.cjs');
const { mendedEngine } = require('./mended-engine-loader.cjs');
const { mendedGrid } = require('./mended-grid-loader.cjs');
const Pages = require('./pages-plugin.cjs');
const { plainFields } = require('./plain-fields-loader.cjs');
const { ROOT, Templates, common, minifiers, typescript } = require('./webpack-parts.cjs');

const SOURCE = path.join(ROOT, 'src/hosts/workbench');

/**
 * The workbench page and its calculation worker, in dist/workbench. No source maps by eval: the page forbids it.
 * `--env templates=FOLDER` offers the templates of a folder besides.
 */
module.exports = (env = {}, argv = {}) => ({
  ...common('workbench', argv.mode),
  entry: { workbench: path.join(SOURCE, 'main.ts') },
  output: {
    path: path.join(ROOT, 'dist/workbench'),
    filename: '[name].js',
    chunkFilename: '[name].js',
    clean: true,
  },
  // The grid's own help of functions: ours takes its place (suggestions.ts), and it is as long as the rest of its words ten times.
  resolve: {
    ...common('workbench', argv.mode).resolve,
    alias: { '@univerjs/sheets-formula/locale/en-US$': false },
  },
  module: {
    rules: [
      typescript(),
      plainFields,
      leanGrid,
      mendedEngine,
      mendedGrid,
      { test: /\.css$/, use: [MiniCssExtractPlugin.loader, 'css-loader'] },
    ],
  },
  // What others made stands in the script that needs it: a file of its own would only be one more to ask for.
  optimization: { minimizer: minifiers(), splitChunks: { cacheGroups: { defaultVendors: false } } },
  plugins: [
    new HtmlWebpackPlugin({
      template: path.join(SOURCE, 'index.html'),
      scriptLoading: 'defer',
      templateParameters: () => {
        const { AS_CHOSEN, AS_CHOSEN_SUM } = loadTs('build/asChosen.ts');
        return { asChosen: AS_CHOSEN, asChosenSum: AS_CHOSEN_SUM };
      },
    }),
    new MiniCssExtractPlugin({ filename: '[name].css' }),
    new Templates(env.templates ? [path.resolve(env.templates)] : []),
    new Pages('workbench', env),
    new Licences(),
  ],
});
