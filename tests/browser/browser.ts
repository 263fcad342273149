import { type Browser, chromium } from 'playwright-core';
import { inject } from 'vitest';

let connected: Promise<Browser> | undefined;

async function connect(): Promise<Browser> {
  const worker = Number(process.env['VITEST_POOL_ID']);
  const address = inject('browsers')[worker - 1];
  if (address === undefined) throw new Error(`There is no browser for worker ${worker}.`);
  return chromium.connect(address);
}

/** The browser of this worker, for one file of tests after the other. */
export const browser = (): Promise<Browser> => (connected ??= connect());
