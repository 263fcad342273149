const path = require('node:path');
const TerserPlugin = require('terser-webpack-plugin');
const { DefinePlugin } = require('webpack');
const { CHECKS, FOLDER, readTemplates } = require('./templates.cjs');

const ROOT = path.resolve(__dirname, '../..');
const TYPESCRIPT = path.join(__dirname, 'typescript-once.cjs');

/** Our sources, turned into scripts one by one: their types are checked apart. */
const typescript = (target = {}) => ({
  test: /\.ts$/,
  exclude: /node_modules/,
  loader: 'ts-loader',
  options: {
    transpileOnly: true,
    onlyCompileBundledFiles: true,
    compiler: TYPESCRIPT,
    // it warns about any compiler but TypeScript's own
    logLevel: 'error',
    compilerOptions: { noEmit: false, ...target },
  },
});

/** The templates, and those of other folders, read and checked anew in each build that follows a change of theirs. */
class Templates {
  constructor(others = []) {
    this.others = others;
  }

  apply(compiler) {
    let read;
    compiler.hooks.compile.tap('Templates', () => {
      read = undefined;
    });
    const part = (name) =>
      DefinePlugin.runtimeValue(() => JSON.stringify((read ??= readTemplates(this.others))[name]), {
        contextDependencies: [
          FOLDER,
          CHECKS,
          ...this.others,
          path.join(ROOT, 'src/catalogue'),
          path.join(ROOT, 'src/sheets'),
        ],
      });
    new DefinePlugin({
      SWEEPTABLE_TEMPLATES: { short: part('short'), tops: part('tops'), long: part('long') },
    }).apply(compiler);
  }
}

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

/**
 * A build that keeps what it made for its next time, until a configuration changes: for those that come again whenever a
 * source is newer. The whole build keeps nothing, which would cost it a third of its time again. In dist/ it outlives `npm ci`.
 */
const kept = (config, file) => ({
  ...config,
  cache: {
    type: 'filesystem',
    name: `${config.name}-${config.mode}`,
    cacheDirectory: path.join(ROOT, 'dist/cache'),
    buildDependencies: { config: [__filename, file, TYPESCRIPT] },
  },
});

module.exports = { ROOT, Templates, common, kept, minifiers, typescript };
