const fs = require('node:fs');
const path = require('node:path');

const ROOT = path.resolve(__dirname, '../..');
/** All that a built file may come from: to list less is to forget something one day. */
const SOURCES = ['src', 'templates', 'tests/published', 'package-lock.json', 'tsconfig.json'];

/** When the newest file below was last changed. */
function newest(file) {
  const stat = fs.statSync(file);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(0, ...fs.readdirSync(file).map((name) => newest(path.join(file, name))));
}

/** Whether a source is newer than a built file, or that file is missing. */
module.exports = function isStale(built) {
  const made = fs.statSync(built, { throwIfNoEntry: false })?.mtimeMs ?? 0;
  return SOURCES.some((source) => newest(path.join(ROOT, source)) > made);
};
