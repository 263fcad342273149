const fs = require('node:fs');
const path = require('node:path');
const { spawn } = require('node:child_process');
const webpack = require('webpack');
const serveHere = require('./serve-here.cjs');
const buildIfStale = require('./build-if-stale.cjs');
const workbench = require('./webpack-workbench.cjs');
const { kept } = require('./webpack-parts.cjs');

const ROOT = path.resolve(__dirname, '../..');
const DIST = path.join(ROOT, 'dist/workbench');
const BUILT = path.join(DIST, 'index.html');
const PORT = 3170;
const OPENERS = { darwin: ['open'], win32: ['cmd', '/c', 'start', ''] };

const build = () =>
  new Promise((resolve, reject) => {
    const config = workbench({}, { mode: 'production' });
    const compiler = webpack(kept(config, require.resolve('./webpack-workbench.cjs')));
    compiler.run((error, stats) => {
      if (error) reject(error);
      else if (stats.hasErrors()) reject(new Error(stats.toString({ all: false, errors: true })));
      else resolve();
      // Writes what makes the next build fast; nobody has to wait for it.
      compiler.close((closing) => closing && console.error(closing.message));
    });
  });

/** A computer without a browser is no error: the address is printed. */
function openBrowser(url) {
  if (process.env.CI || process.env.SWEEPTABLE_NO_OPEN) return;
  const [command, ...args] = OPENERS[process.platform] ?? ['xdg-open'];
  const child = spawn(command, [...args, url], { stdio: 'ignore', detached: true });
  child.on('error', () => {});
  child.unref();
}

/** Builds dist/workbench if it is missing or older than the sources. Says what it does. */
function buildIfNeeded() {
  return buildIfStale(BUILT, async () => {
    const started = Date.now();
    const reason = fs.existsSync(BUILT)
      ? 'The sources are newer than the built workbench.'
      : 'The workbench is not built yet.';
    console.log(`${reason} Building it, which takes up to half a minute …`);
    await build();
    console.log(`Built in ${Math.round((Date.now() - started) / 1000)} s.`);
  });
}

/** The port that is asked for by --port. */
function portOf(args) {
  if (args.length === 0) return PORT;
  const port = Number(args[1]);
  if (args[0] === '--port' && args.length === 2 && Number.isInteger(port) && port > 0 && port < 65_536)
    return port;
  throw new Error('There is one option: --port, followed by a number up to 65535.');
}

async function start() {
  const port = portOf(process.argv.slice(2));
  await buildIfNeeded();
  const { url, isNew, close } = await serveHere(DIST, port);
  if (!isNew) {
    console.log(
      `Sweeptable runs at ${url} already, where your workbook is.\nTo start this copy instead, stop that one first.`,
    );
    openBrowser(url);
    return;
  }
  console.log(`Sweeptable runs at ${url}\nStop it with Ctrl+C.`);
  for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => void close());
  openBrowser(url);
}

module.exports = { DIST, buildIfNeeded };

if (require.main === module)
  start().catch((error) => {
    console.error(error.message);
    process.exitCode = 1;
  });
