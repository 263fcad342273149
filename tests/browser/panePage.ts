import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { resolve } from 'node:path';
import { build } from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { launch } from './launch';

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

export interface Width {
  readonly width: number;
  readonly height: number;
}

/** The pane on a page of its own beside a spreadsheet that does what a test says. */
export class PanePages {
  readonly url: string;
  readonly #browser: Browser;
  readonly #close: () => void;

  private constructor(url: string, browser: Browser, close: () => void) {
    this.url = url;
    this.#browser = browser;
    this.#close = close;
  }

  static async start(): Promise<PanePages> {
    const [browser, style, script] = await Promise.all([
      launch(),
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
    const { port } = server.address() as AddressInfo;
    return new PanePages(`http://127.0.0.1:${port}/`, browser, () => {
      server.closeAllConnections();
      server.close();
    });
  }

  /** A newcomer's page. What it must never do gathers in `complaints`. */
  async open({ width, height }: Width = { width: 350, height: 640 }, query = ''): Promise<[Page, string[]]> {
    // Without a locale some browsers name theirs in a way that the chart library cannot read.
    const context = await this.#browser.newContext({ viewport: { width, height }, locale: 'en-US' });
    const page = await context.newPage();
    page.setDefaultTimeout(10_000);
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('request', (request) => {
      if (!request.url().startsWith(this.url) && !request.url().startsWith('data:'))
        complaints.push(`asked for ${request.url()}`);
    });
    await page.goto(`${this.url}${query}`);
    await page.getByRole('tab', { name: 'Sheets' }).waitFor();
    return [page, complaints];
  }

  async close(): Promise<void> {
    await this.#browser.close();
    this.#close();
  }
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
