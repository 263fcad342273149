import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { dirname, extname, join } from 'node:path';
import type { Page } from 'playwright-core';
import { inject } from 'vitest';
import type { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import type { Item } from '../hosts/excel/support/item';
import type { Batch } from '../hosts/excel/support/wire';
import { KeptPage, OwnPage, type Size } from './ownPage';

const LIBRARY = join(
  dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/package.json')),
  'dist',
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
const OWN = 'office-js/office.js';
/** That of a build with an own copy of office.js. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'";

/** The real library of Excel on the web, in an Excel that is the test's. */
const libraryWithin = async (around: Exclude<Around, string>): Promise<string> =>
  BEFORE + (await readFile(join(LIBRARY, 'excel-web-16.00.js'), 'utf8')) + after(around.theme);

/** The built pane with the real library of Excel on the web in it. */
class ExcelPane {
  readonly #folder: string;
  readonly #isAsBuilt: boolean;
  readonly #page = new KeptPage(() => this.#open());
  #served: Promise<string> | undefined;
  #around: Around = 'no host';
  /** What the library has spoken of, by its contexts. */
  #known = new Map<number, Map<number, Item>>();

  /** Unless it is taken as it was built, the page has its own copy of office.js, with the policy that goes with that. */
  constructor(folder: string, { isAsBuilt = false } = {}) {
    this.#folder = folder;
    this.#isAsBuilt = isAsBuilt;
  }

  /** A newcomer's pane for one test, which must end with these complaints and no other. */
  async use(
    around: Around,
    use: (page: Page) => Promise<void>,
    size?: Size,
    expected?: readonly unknown[],
  ): Promise<void> {
    const url = await this.#address();
    const load = (own: OwnPage): Promise<void> => {
      this.#around = around;
      this.#known = new Map();
      return own.load(`${url}taskpane.html`, size);
    };
    await this.#page.use(load, use, expected);
  }

  async #open(): Promise<OwnPage> {
    const own = await OwnPage.open(await this.#address(), this.#isAsBuilt ? HOSTED : undefined);
    if (this.#isAsBuilt)
      await own.page.route(HOSTED, async (route) => {
        if (typeof this.#around === 'string') return route.abort();
        return route.fulfill({ contentType: TYPES['.js'] ?? '', body: await libraryWithin(this.#around) });
      });
    await own.page.exposeFunction('answerBatch', (context: number, flags: number, text: string) => {
      if (typeof this.#around === 'string') throw new Error('There is no Excel.');
      const { workbook } = this.#around;
      const known = this.#known.get(context) ?? new Map<number, Item>();
      this.#known.set(context, known);
      const open = typeof workbook === 'function' ? workbook() : workbook;
      return JSON.stringify(open.answer(JSON.parse(text) as Batch, known, flags));
    });
    return own;
  }

  #address(): Promise<string> {
    return (this.#served ??= this.#serve());
  }

  async #serve(): Promise<string> {
    const server = createServer((request, response) => {
      const name = new URL(request.url ?? '/', 'http://localhost').pathname.slice(1);
      if (name === OWN && this.#around === 'no office.js') {
        response.destroy();
        return;
      }
      this.#content(name).then(
        (content) => {
          const policy = name === 'taskpane.html' && !this.#isAsBuilt;
          response.writeHead(200, {
            'content-type': TYPES[extname(name)] ?? 'text/plain',
            ...(policy && { 'content-security-policy': POLICY }),
          });
          response.end(content);
        },
        () => response.writeHead(404).end(),
      );
    });
    await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
    return `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  }

  async #content(name: string): Promise<string | Buffer> {
    if (name === OWN && typeof this.#around === 'object') return libraryWithin(this.#around);
    if (name.startsWith('office-js/')) return readFile(join(LIBRARY, name.slice('office-js/'.length)));
    const file = join(this.#folder, name);
    if (name !== 'taskpane.html' || this.#isAsBuilt) return readFile(file);
    return (await readFile(file, 'utf8')).replace(HOSTED, OWN);
  }
}

/** The page of a build, as it stands in its folder. */
export const paneAsBuilt = (folder: string): ExcelPane => new ExcelPane(folder, { isAsBuilt: true });

let pane: ExcelPane | undefined;
/** A newcomer's pane in Excel for one test, which must end with these complaints and no other. */
export const inExcel: ExcelPane['use'] = (...use) => (pane ??= new ExcelPane(inject('addIn'))).use(...use);
