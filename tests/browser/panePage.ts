import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { resolve } from 'node:path';
import { build } from 'esbuild';
import type { Page } from 'playwright-core';
import { KeptPage, OwnPage, type Size } from './ownPage';

const { readTemplates } = createRequire(import.meta.url)('../../src/build/templates.cjs') as {
  readTemplates: () => unknown;
};

/** The strictest policy that the pane meets: the workbench's, without its worker. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; font-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'";
const PAGE = `<!doctype html>
<html lang="en" class="pane-page">
<meta charset="utf-8" />
<meta name="viewport" content="width=device-width, initial-scale=1" />
<title>Pane</title>
<link rel="icon" href="data:," />
<link rel="stylesheet" href="pane.css" />
<script src="page.js" defer></script>
<body class="pane-page"><main><h1 class="heard">Pane</h1><div id="pane"></div></main></body>
</html>`;

let served: Promise<string> | undefined;
/** Where the pane stands beside a spreadsheet that does what a test says, for as long as the worker lives. */
const address = (): Promise<string> => (served ??= serve());

async function serve(): Promise<string> {
  const [style, script] = await Promise.all([
    readFile(resolve(import.meta.dirname, '../../src/pane/pane.css'), 'utf8'),
    bundle(),
  ]);
  const files: Readonly<Record<string, readonly [string, string]>> = {
    '/': ['text/html', PAGE],
    '/pane.css': ['text/css', style],
    '/page.js': ['text/javascript', script],
  };
  const server = createServer((request, response) => {
    const [type, text] = files[new URL(request.url ?? '/', 'http://localhost').pathname] ?? [];
    response.writeHead(text === undefined ? 404 : 200, {
      'content-type': `${type ?? 'text/plain'}; charset=utf-8`,
      'content-security-policy': POLICY,
    });
    response.end(text);
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
}

async function bundle(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [resolve(import.meta.dirname, 'fakeHost.ts')],
    bundle: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    define: { SWEEPTABLE_TEMPLATES: JSON.stringify(readTemplates()) },
  });
  return outputFiles[0]?.text ?? '';
}

const kept = new KeptPage(async () => OwnPage.open(await address()));

/** A newcomer's pane for one test, which must end with these complaints and no other. */
export async function onPane(
  use: (page: Page) => Promise<void>,
  size?: Size,
  { query = '', expected }: { query?: string; expected?: readonly unknown[] } = {},
): Promise<void> {
  const url = await address();
  await kept.use((own) => own.load(`${url}${query}`, size), use, expected);
}

/** The same on a page of its own, to which something is done before it loads. */
export async function onPaneAfter(
  before: (page: Page) => Promise<unknown>,
  use: (page: Page) => Promise<void>,
): Promise<void> {
  const url = await address();
  const own = await OwnPage.open(url);
  await before(own.page);
  await own.load(url);
  await own.use(use);
  await own.close();
}
