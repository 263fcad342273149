const fs = require('node:fs');
const path = require('node:path');

const ROOT = path.resolve(__dirname, '../..');
/** All that a built file may come from: to list less is to forget something one day. */
const SOURCES = ['src', 'templates', 'package-lock.json', 'tsconfig.json'];

/** When the newest file below was last changed. */
function newest(file) {
  const stat = fs.statSync(file);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(0, ...fs.readdirSync(file).map((name) => newest(path.join(file, name))));
}

/** Whether a source is newer than a built file, or that file is missing. */
function isStale(built) {
  const made = fs.statSync(built, { throwIfNoEntry: false })?.mtimeMs ?? 0;
  return SOURCES.some((source) => newest(path.join(ROOT, source)) > made);
}

/**
 * Builds a file where it is missing or older than a source, and dates it by when that began: what is changed meanwhile is
 * newer, and a file that came out the same is not written again.
 */
module.exports = async function buildIfStale(built, build) {
  if (!isStale(built)) return;
  const started = new Date();
  await build();
  fs.utimesSync(built, started, started);
};
