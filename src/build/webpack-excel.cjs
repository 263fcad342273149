const fs = require('node:fs');
const path = require('node:path');
const { sources } = require('webpack');
const Licences = require('./licences-plugin.cjs');
const loadTs = require('./load-ts.cjs');
const Pages = require('./pages-plugin.cjs');
const { ROOT, Templates, common, minifiers, typescript } = require('./webpack-parts.cjs');

const PANE = path.join(ROOT, 'src/pane');
const ICONS = path.join(ROOT, 'src/hosts/excel/icons');
const OFFICE = path.join(ROOT, 'node_modules/@microsoft/office-js/dist');

const OFFICE_ADDRESS = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';
/** What Excel asks for on Windows, on the Mac and on the web; texts in English. */
const OFFICE_FILES = [
  'office.js',
  'o15apptofilemappingtable.js',
  'excel-web-16.00.js',
  'excel-win32-16.01.js',
  'excel-mac-16.00.js',
  'telemetry/oteljs_agave.js',
  'en-us/office_strings.js',
];
/** What a page with the hosted library runs scripts from: its address, and the one it falls back on for a part of it. */
const HOSTED_SCRIPTS = ['https://appsforoffice.microsoft.com', 'https://ajax.aspnetcdn.com'];
/** office.js writes styles into the page by itself; it needs nothing else that a strict policy forbids. */
const policy = (scripts) =>
  `default-src 'none'; script-src ${["'self'", ...scripts].join(' ')}; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'`;

/** The script of the functions: a page of its own starts with it, so it is complete, small and free of what people read. */
const FUNCTIONS = 'functions';
const callOnly = {
  test: /\.ts$/,
  include: path.join(ROOT, 'src/catalogue/rows'),
  issuerLayer: FUNCTIONS,
  enforce: 'pre',
  loader: path.join(__dirname, 'call-only-loader.cjs'),
};

/** The address of the build, with the slash that the manifest's addresses continue from. */
function originFrom(given) {
  if (given === undefined) return undefined;
  if (!/^https:\/\/[^/?#]+(\/[^?#]*)?$/.test(given))
    throw new Error(`origin must be an https address such as https://host/path/, not ${given}`);
  return given.endsWith('/') ? given : `${given}/`;
}

/** Emits what stands beside the scripts: page, metadata, manifest, icons and, on demand, an own copy of office.js. */
class AddInFiles {
  constructor({ origin, officejs, policy: wanted }) {
    this.origin = originFrom(origin);
    this.ownOffice = Boolean(officejs);
    this.policy = this.ownOffice ? policy([]) : wanted ? policy(HOSTED_SCRIPTS) : undefined;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap('AddInFiles', (compilation) => {
      const stage = compilation.constructor.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tap({ name: 'AddInFiles', stage }, () => this.emitAll(compilation));
    });
  }

  emitAll(compilation) {
    const read = (file) => {
      compilation.fileDependencies.add(file);
      return fs.readFileSync(file);
    };
    const emit = (name, content, info) => compilation.emitAsset(name, new sources.RawSource(content), info);
    for (const folder of ['catalogue', 'exposure', 'hosts/excel'])
      compilation.contextDependencies.add(path.join(ROOT, 'src', folder));

    const { functionsJson, LOCAL_ORIGIN } = loadTs('hosts/excel/metadata.ts');
    const { CATALOGUE } = loadTs('catalogue/index.ts');
    const origin = this.origin ?? LOCAL_ORIGIN;

    emit('functions.json', JSON.stringify(functionsJson(CATALOGUE, origin)));
    emit('manifest.xml', read(path.join(ROOT, 'manifest.xml')).toString().replaceAll(LOCAL_ORIGIN, origin));
    emit('taskpane.css', read(path.join(PANE, 'pane.css')));
    emit('taskpane.html', this.page(read(path.join(PANE, 'taskpane.html')).toString()));
    for (const icon of fs.readdirSync(ICONS)) emit(`icons/${icon}`, read(path.join(ICONS, icon)));
    // Marked as minimized, so that the bytes stay as they are: the licence of office.js forbids changing them.
    if (this.ownOffice)
      for (const file of OFFICE_FILES)
        emit(`office-js/${file}`, read(path.join(OFFICE, file)), { minimized: true });
  }

  /** Microsoft names no list of what its hosted office.js loads, so there the policy must be asked for. */
  page(template) {
    return template
      .replace('{{officeJs}}', this.ownOffice ? 'office-js/office.js' : OFFICE_ADDRESS)
      .replace(
        '{{contentSecurityPolicy}}',
        this.policy ? `<meta http-equiv="Content-Security-Policy" content="${this.policy}" />` : '',
      );
  }
}

/**
 * The Excel add-in, in dist/.
 * `--env origin=https://host/path/` builds for that address; `--env officejs` adds an own copy of office.js, for closed networks;
 * `--env policy` forbids the page with Microsoft's hosted office.js what it is not known to need; `--env contact="…"` says on
 * the support page who helps.
 */
module.exports = (env = {}, argv = {}) => ({
  ...common('excel', argv.mode),
  entry: {
    functions: { import: './src/hosts/excel/functions.ts', layer: FUNCTIONS },
    taskpane: './src/hosts/excel/taskpane.ts',
  },
  experiments: { layers: true },
  output: {
    path: path.join(ROOT, 'dist'),
    filename: '[name].js',
    // Other builds keep theirs in dist/ too; only a copy of office.js must not linger where this one wants none.
    clean: { keep: (name) => !name.startsWith('office-js') },
  },
  module: { rules: [typescript(), callOnly] },
  // Each part that comes late is one file with a name, which whoever hosts the files can be told.
  optimization: { minimizer: minifiers(/^functions\.js$/), splitChunks: false },
  plugins: [new Templates(), new AddInFiles(env), new Pages('excel', env), new Licences()],
});
