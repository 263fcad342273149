const fs = require('node:fs');
const path = require('node:path');
const { Compilation, sources } = require('webpack');
const { licencesText, packageIn } = require('./licence-texts.cjs');

const OURS = path.resolve(__dirname, '../../LICENSE');
/** The folder of the package that a file belongs to. */
const PACKAGE = /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/;

/** Folders of the packages that stand in the chunks of a build. */
function packageFolders({ modules, chunkGraph }) {
  const folders = new Set();
  const visit = (module) => {
    // a loader may put in what others made
    for (const file of [module.nameForCondition?.() ?? '', ...(module.buildInfo?.madeBy ?? [])]) {
      const [folder] = PACKAGE.exec(file) ?? [];
      if (folder !== undefined) folders.add(folder);
    }
    // Webpack joins modules into one; each of them counts.
    for (const joined of module.modules ?? []) visit(joined);
  };
  for (const module of modules) if (chunkGraph.getNumberOfModuleChunks(module) > 0) visit(module);
  return [...folders].sort();
}

/** Emits licences.txt: our licence, and those of all that others made and the build took in. */
module.exports = class Licences {
  apply(compiler) {
    compiler.hooks.thisCompilation.tap('Licences', (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tap({ name: 'Licences', stage }, () => {
        compilation.fileDependencies.add(OURS);
        const text = licencesText(
          fs.readFileSync(OURS, 'utf8'),
          packageFolders(compilation).map((folder) => packageIn(folder)),
        );
        compilation.emitAsset('licences.txt', new sources.RawSource(text));
      });
    });
  }
};
