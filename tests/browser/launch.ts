import { existsSync } from 'node:fs';
import { type BrowserServer, chromium } from 'playwright-core';

const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const SYSTEM_BROWSERS = ['/usr/bin/chromium', '/usr/bin/google-chrome'];
const NOT_INSTALLED = /is not found at|is not supported|Unsupported/;

/** A browser of this computer where there is one; else the one that came with npm. */
export async function launch(): Promise<BrowserServer> {
  const path = process.env['CHROME_PATH'] ?? SYSTEM_BROWSERS.find((candidate) => existsSync(candidate));
  if (path) return chromium.launchServer({ executablePath: path, args: ARGS });
  return (await launchChannel('chrome')) ?? (await launchChannel('msedge')) ?? launchFromNpm();
}

async function launchChannel(channel: string): Promise<BrowserServer | undefined> {
  try {
    return await chromium.launchServer({ channel, args: ARGS });
  } catch (error) {
    if (error instanceof Error && NOT_INSTALLED.test(error.message)) return undefined;
    throw error;
  }
}

/** Runs on Linux x64. Told that it is in a bare container, it brings the libraries that a bare system lacks. */
async function launchFromNpm(): Promise<BrowserServer> {
  process.env['AWS_LAMBDA_JS_RUNTIME'] ??= 'nodejs20.x';
  const { default: packed } = await import('@sparticuz/chromium');
  return chromium.launchServer({ executablePath: await packed.executablePath(), args: ARGS });
}
