/** Runs the command line, and builds it first where it is missing or older than a source. */
const fs = require('node:fs');
const path = require('node:path');
const buildIfStale = require('./build-if-stale.cjs');

const ROOT = path.resolve(__dirname, '../..');
const BUILT = path.join(ROOT, 'dist/command/command.cjs');

/** Builds beside the old file and then takes its place, so that a command that runs meanwhile never reads half a file. */
function build() {
  const webpack = require('webpack');
  const { kept } = require('./webpack-parts.cjs');
  const config = kept(
    require('./webpack-command.cjs')({}, { mode: 'production' }),
    require.resolve('./webpack-command.cjs'),
  );
  const output = { ...config.output, path: path.join(ROOT, `dist/command-${process.pid}`) };
  const compiler = webpack({ ...config, output });
  return new Promise((resolve, reject) => {
    compiler.run((fault, stats) => {
      if (fault || stats.hasErrors())
        return reject(fault ?? new Error(stats.toString({ all: false, errors: true })));
      fs.mkdirSync(path.dirname(BUILT), { recursive: true });
      fs.renameSync(path.join(output.path, 'command.cjs'), BUILT);
      fs.rmSync(output.path, { recursive: true });
      compiler.close((closing) => (closing ? reject(closing) : resolve()));
    });
  });
}

async function main() {
  await buildIfStale(BUILT, () => {
    process.stderr.write('Building the command line, which takes a moment …\n');
    return build();
  });
  require(BUILT);
}

main().catch((reason) => {
  process.stderr.write(`The command line did not start.\n${reason.stack}\n`);
  process.exitCode = 1;
});
