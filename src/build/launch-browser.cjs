const fs = require('node:fs');
const { chromium } = require('playwright-core');

const SYSTEM_BROWSERS = ['/usr/bin/chromium', '/usr/bin/google-chrome'];

/** A browser of this computer where there is one; else the one that came with npm, which runs on Linux. */
module.exports = async function launchBrowser() {
  const found = [process.env.CHROME_PATH, ...SYSTEM_BROWSERS].find(
    (candidate) => candidate && fs.existsSync(candidate),
  );
  if (found) return chromium.launch({ executablePath: found, args: ['--no-sandbox'] });
  process.env.AWS_LAMBDA_JS_RUNTIME ??= 'nodejs20.x';
  const { default: packed } = await import('@sparticuz/chromium');
  return chromium.launch({ executablePath: await packed.executablePath(), args: ['--no-sandbox'] });
};
