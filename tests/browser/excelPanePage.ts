import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { dirname, extname, join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import type { FakeWorkbook } from '../hosts/support/fake-workbook';
import type { Item } from '../hosts/support/item';
import type { Batch } from '../hosts/support/wire';
import { type BuiltAddIn, buildAddIn, keptAddIn } from '../hosts/support/built-add-in';
import { launch } from './launch';
import type { Size } from './paneChecks';

const LIBRARY = join(
  dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/package.json')),
  'dist/excel-web-16.00.js',
);
const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
};

/** What stands around the page: a workbook in Excel (or which it is at the time), nothing at all, or a network that keeps office.js away. */
export type Around =
  | {
      readonly workbook: FakeWorkbook | (() => FakeWorkbook);
      readonly theme?: { readonly bodyBackgroundColor?: string };
    }
  | 'no host'
  | 'no office.js';

declare global {
  interface Window {
    /** Answers a batch of the library's, which has its answer as text. */
    answerBatch(context: number, flags: number, batch: string): Promise<string>;
    /** Excel tells the library that another cell is selected. */
    tellSelection(): void;
    /** Excel tells the library of another event. */
    tellEvent(message: object): void;
  }
}

/** What office.js itself defines before it loads the host's file. */
const BEFORE = `var CustomFunctions = {
  _association: { mappings: {}, onchange() {} },
  associate(id, run) { this._association.mappings[id.toUpperCase()] = run; },
};`;

/** Takes the library's requests to the workbook of the test, and says that Excel is there. */
const after = (theme: object | undefined): string => `;(() => {
  let contexts = 0;
  OfficeExtension.SessionBase._overrideSession = {
    _resolveRequestUrlAndHeaderInfo: () => Promise.resolve({ url: 'workbook://', headers: {} }),
    _createRequestExecutorOrNull() {
      const context = ++contexts;
      return {
        executeAsync: (_data, flags, message) =>
          window.answerBatch(context, flags, JSON.stringify(message.Body)).then((text) => ({
            HttpStatusCode: 200, ErrorCode: null, ErrorMessage: null, Headers: {}, Body: JSON.parse(text),
          })),
      };
    },
  };
  OfficeExtension.HostBridge.init({ sendMessageToHost() {} });
  const selecting = new Set();
  window.tellSelection = () => selecting.forEach((listener) => listener());
  window.tellEvent = (message) =>
    OfficeExtension.GenericEventRegistration.getGenericEventRegistration('')._handleRichApiMessage(message);
  // The document of the older library, through which Excel tells a change of selection.
  const document = {
    addHandlerAsync(type, listener, answered) {
      selecting.add(listener);
      answered({ status: 'succeeded' });
    },
    removeHandlerAsync(type, { handler }, answered) {
      selecting.delete(handler);
      answered({ status: 'succeeded' });
    },
  };
  const info = { host: 'Excel', platform: 'OfficeOnline' };
  const requirements = { isSetSupported: () => true };
  window.Office = Object.create(window.Office, {
    HostType: { value: { Excel: 'Excel' } },
    onReady: { value: (tell) => { tell?.(info); return Promise.resolve(info); } },
    context: { value: { requirements, document, officeTheme: ${JSON.stringify(theme)} } },
  });
})();`;

const HOSTED = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';

/** The pane as it is built for closed networks, or as `env` says, with the real library of Excel on the web in it. */
export class ExcelPanePages {
  readonly #addIn: BuiltAddIn;
  readonly #browser: Browser;
  readonly #url: string;
  readonly #stop: () => void;

  private constructor(addIn: BuiltAddIn, browser: Browser, url: string, stop: () => void) {
    this.#addIn = addIn;
    this.#browser = browser;
    this.#url = url;
    this.#stop = stop;
  }

  static async start(env?: Parameters<typeof buildAddIn>[0]): Promise<ExcelPanePages> {
    const [addIn, browser] = await Promise.all([env ? buildAddIn(env) : keptAddIn(), launch()]);
    const server = createServer((request, response) => {
      const name = new URL(request.url ?? '/', 'http://localhost').pathname;
      readFile(join(addIn.folder, name)).then(
        (content) =>
          response.writeHead(200, { 'content-type': TYPES[extname(name)] ?? 'text/plain' }).end(content),
        () => response.writeHead(404).end(),
      );
    });
    await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
    const { port } = server.address() as AddressInfo;
    return new ExcelPanePages(addIn, browser, `http://127.0.0.1:${port}/`, () => {
      server.closeAllConnections();
      server.close();
    });
  }

  /** A newcomer's page. What it must never do gathers in `complaints`. */
  async open(
    around: Around,
    { width, height }: Size = { width: 350, height: 640 },
  ): Promise<[Page, string[]]> {
    const context = await this.#browser.newContext({ viewport: { width, height }, locale: 'en-US' });
    const page = await context.newPage();
    page.setDefaultTimeout(10_000);
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('request', (request) => {
      const url = request.url();
      if (!url.startsWith(this.#url) && !url.startsWith('data:') && url !== HOSTED)
        complaints.push(`asked for ${url}`);
    });
    await page.route(/\/office\.js$/, async (route) => {
      if (around === 'no host') return route.continue();
      if (around === 'no office.js') return route.abort();
      const body = BEFORE + (await readFile(LIBRARY, 'utf8')) + after(around.theme);
      return route.fulfill({ contentType: 'text/javascript', body });
    });
    if (typeof around === 'object') await answerFor(page, around.workbook);
    await page.goto(`${this.#url}taskpane.html`);
    await page.getByRole('tab', { name: 'Sheets' }).waitFor();
    return [page, complaints];
  }

  async close(): Promise<void> {
    await this.#browser.close();
    this.#stop();
    await this.#addIn.remove();
  }
}

function answerFor(page: Page, workbook: FakeWorkbook | (() => FakeWorkbook)): Promise<unknown> {
  const open = typeof workbook === 'function' ? workbook : () => workbook;
  const contexts = new Map<number, Map<number, Item>>();
  return page.exposeFunction('answerBatch', (context: number, flags: number, text: string) => {
    const known = contexts.get(context) ?? new Map<number, Item>();
    contexts.set(context, known);
    return JSON.stringify(open().answer(JSON.parse(text) as Batch, known, flags));
  });
}
