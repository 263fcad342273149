import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

const ARGS = ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'];

async function path() {
  const found = [process.env.CHROME_PATH, '/usr/bin/chromium', '/usr/bin/google-chrome'].find(
    (candidate) => candidate && existsSync(candidate),
  );
  if (found) return found;
  process.env.AWS_LAMBDA_JS_RUNTIME ??= 'nodejs20.x';
  return (await import('@sparticuz/chromium')).default.executablePath();
}

/** A browser that has never seen the page. */
export const freshBrowser = async () => chromium.launch({ executablePath: await path(), args: ARGS });

export const median = (times) => times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)];
