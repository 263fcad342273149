const path = require('node:path');
const HtmlWebpackPlugin = require('html-webpack-plugin');
const MiniCssExtractPlugin = require('mini-css-extract-plugin');
const TerserPlugin = require('terser-webpack-plugin');
const { DefinePlugin, IgnorePlugin } = require('webpack');
const Pages = require('./pages-plugin.cjs');
const { FOLDER, readTemplates } = require('./templates.cjs');

const ROOT = path.resolve(__dirname, '../..');
const SOURCE = path.join(ROOT, 'src/hosts/workbench');
const DICTIONARY = /^\.\/(?!en-gb)[a-z]{2,3}(-[a-z0-9]+)*-[\w-]{8}\.js$/;

/** The grid offers some seventy hyphenation dictionaries; it asks for one, and fails without that one. */
const withoutDictionaries = new IgnorePlugin({
  checkResource: (resource, context) => context.includes('engine-render') && DICTIONARY.test(resource),
});

/** The templates, read and checked anew in each build that follows a change of theirs. */
const withTemplates = new DefinePlugin({
  SWEEPTABLE_TEMPLATES: DefinePlugin.runtimeValue(() => JSON.stringify(readTemplates()), {
    contextDependencies: [FOLDER],
  }),
});

/** The workbench page and its calculation worker, in dist/workbench. No source maps by eval: the page forbids it. */
module.exports = (env = {}, argv = {}) => ({
  name: 'workbench',
  mode: argv.mode ?? 'production',
  devtool: false,
  context: ROOT,
  entry: { workbench: path.join(SOURCE, 'main.ts') },
  output: {
    path: path.join(ROOT, 'dist/workbench'),
    filename: '[name].js',
    chunkFilename: '[name].js',
    clean: true,
  },
  resolve: { extensions: ['.ts', '.tsx', '.js'] },
  module: {
    rules: [
      {
        test: /\.tsx?$/,
        exclude: /node_modules/,
        loader: 'ts-loader',
        options: { transpileOnly: true, onlyCompileBundledFiles: true, compilerOptions: { noEmit: false } },
      },
      { test: /\.css$/, use: [MiniCssExtractPlugin.loader, 'css-loader'] },
    ],
  },
  plugins: [
    new HtmlWebpackPlugin({ template: path.join(SOURCE, 'index.html'), scriptLoading: 'defer' }),
    new MiniCssExtractPlugin({ filename: '[name].css' }),
    withoutDictionaries,
    withTemplates,
    new Pages(env),
  ],
  optimization: {
    minimizer: [new TerserPlugin({ minify: TerserPlugin.esbuildMinify, extractComments: false })],
  },
  performance: { hints: false },
  cache: {
    type: 'filesystem',
    name: `workbench-${argv.mode ?? 'production'}`,
    buildDependencies: { config: [__filename] },
  },
});
