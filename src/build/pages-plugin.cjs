const path = require('node:path');
const { Compilation, sources } = require('webpack');
const loadTs = require('./load-ts.cjs');

const READ = ['build', 'catalogue', 'exposure', 'pane'];

/** Emits the pages of words for what they stand beside. `--env contact="…"` says on the support page who helps in the studio. */
module.exports = class Pages {
  constructor(beside, { contact } = {}) {
    if (contact !== undefined && (typeof contact !== 'string' || contact.trim() === ''))
      throw new Error('contact must say who helps, such as --env contact="Studio desk, extension 41"');
    this.beside = beside;
    this.contact = contact;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap('Pages', (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tap({ name: 'Pages', stage }, () => {
        for (const folder of READ) compilation.contextDependencies.add(path.resolve(__dirname, '..', folder));
        // marked as minimized, so that they stay as readable as they are written
        for (const [name, html] of Object.entries(loadTs('build/pages.ts').pages(this.beside, this.contact)))
          compilation.emitAsset(name, new sources.RawSource(html), { minimized: true });
      });
    });
  }
};
