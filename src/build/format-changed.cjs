/** Tells which files that changed since the last commit are not formatted; all files where that cannot be told. */
const { spawnSync } = require('node:child_process');
const path = require('node:path');

/** The files in a folder that are not as the last commit there has them, or undefined where git says nothing of it. */
function changedFiles(folder) {
  const git = (...args) => spawnSync('git', args, { cwd: folder, encoding: 'utf8' });
  const [changed, added] = [
    git('diff', '--name-only', '--relative', '--diff-filter=d', '-z', 'HEAD'),
    git('ls-files', '--others', '--exclude-standard', '-z'),
  ];
  if (changed.status !== 0 || added.status !== 0) return undefined;
  return (changed.stdout + added.stdout).split('\0').filter(Boolean);
}

module.exports = { changedFiles };

if (require.main === module) {
  const root = path.resolve(__dirname, '../..');
  const files = changedFiles(root) ?? ['.'];
  if (files.length > 0) {
    const prettier = path.join(path.dirname(require.resolve('prettier/package.json')), 'bin/prettier.cjs');
    const { status } = spawnSync(process.execPath, [prettier, '--check', '--ignore-unknown', ...files], {
      cwd: root,
      stdio: 'inherit',
    });
    process.exitCode = status ?? 1;
  }
}
