/** `npm run excel` loads the add-in into Excel on this computer; `npm run excel:stop` takes it out again. */
const { spawnSync } = require('node:child_process');
const path = require('node:path');

const ROOT = path.resolve(__dirname, '../..');
const BY_HAND = `Excel does not run on this system, so the add-in cannot be loaded by itself. With Excel on the web:
  1. npm run build        makes dist/, with dist/manifest.xml
  2. npm run dev-server   serves it at https://localhost:3000/ (it asks once to trust a certificate for localhost)
  3. Open a workbook in Excel on the web: Home > Add-ins > More Add-ins > My Add-ins > Upload My Add-in,
     and choose dist/manifest.xml.
  4. To take it out: the same place, the three dots beside Sweeptable, Remove.
For everything but Excel itself, npm start opens the workbench in a browser.`;

/** Runs the command of an installed package, without a shell; ends with its exit code where it failed. */
function run(command, ...given) {
  const { status } = spawnSync(process.execPath, [require.resolve(command), ...given], {
    cwd: ROOT,
    stdio: 'inherit',
  });
  if (status !== 0) process.exit(status ?? 1);
}

const action = process.argv[2];
if (action !== 'start' && action !== 'stop') {
  console.error('Say start or stop.');
  process.exit(1);
}
if (process.platform !== 'win32' && process.platform !== 'darwin') {
  console.log(BY_HAND);
  process.exit(0);
}
// Built anew each time: what is in dist/ may be for another address.
if (action === 'start')
  run('webpack-cli/bin/cli.js', '--config', 'src/build/webpack-excel.cjs', '--mode', 'production');
run('office-addin-debugging/cli.js', action, 'manifest.xml', 'desktop');
