const path = require('node:path');
const TerserPlugin = require('terser-webpack-plugin');
const { DefinePlugin } = require('webpack');
const { CHECKS, FOLDER, readTemplates } = require('./templates.cjs');

const ROOT = path.resolve(__dirname, '../..');

/** Our sources, turned into scripts one by one: their types are checked apart. */
const typescript = (target = {}) => ({
  test: /\.ts$/,
  exclude: /node_modules/,
  loader: 'ts-loader',
  options: {
    transpileOnly: true,
    onlyCompileBundledFiles: true,
    compiler: path.join(__dirname, 'typescript-once.cjs'),
    // of another compiler than TypeScript's own it warns
    logLevel: 'error',
    compilerOptions: { noEmit: false, ...target },
  },
});

/** The templates, read and checked anew in each build that follows a change of theirs. */
const withTemplates = () =>
  new DefinePlugin({
    SWEEPTABLE_TEMPLATES: DefinePlugin.runtimeValue(() => JSON.stringify(readTemplates()), {
      contextDependencies: [FOLDER, CHECKS, path.join(ROOT, 'src/catalogue')],
    }),
  });

/** The quick one for most scripts; for those that must be small a thorough one. */
const minifiers = (small) => [
  new TerserPlugin({ minify: TerserPlugin.esbuildMinify, extractComments: false, exclude: small }),
  ...(small
    ? [
        new TerserPlugin({
          test: small,
          extractComments: false,
          terserOptions: { ecma: 2022, compress: { passes: 3 } },
        }),
      ]
    : []),
];

/** What every build has in common, by its name. */
const common = (name, mode = 'production') => ({
  name,
  mode,
  devtool: false,
  context: ROOT,
  resolve: { extensions: ['.ts', '.js'] },
  optimization: { minimizer: minifiers() },
  performance: { hints: false },
  // The build's own cache advises against long texts such as the templates; nobody who builds can act on that.
  infrastructureLogging: { level: 'error' },
});

/** Keeps what was built for the next time, until a configuration changes. */
const cached = (name, mode = 'production', config) => ({
  type: 'filesystem',
  name: `${name}-${mode}`,
  buildDependencies: { config: [__filename, config] },
});

module.exports = { ROOT, cached, common, minifiers, typescript, withTemplates };
