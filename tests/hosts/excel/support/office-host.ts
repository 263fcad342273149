/**
 * Runs the real Excel library of office.js in Node, as Excel would load it, with a workbook in memory at the other end.
 * Only the wire is replaced; batching, conversion of arguments, errors and answers are Microsoft's own code.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import vm from 'node:vm';
import type { FakeWorkbook } from './fake-workbook';
import type { Item } from './item';
import type { Batch } from './wire';

const LIBRARY = join(
  dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/package.json')),
  'dist',
);

/** The library's file for each host that has custom functions with a shared runtime. */
export const HOST_FILES = ['excel-web-16.00.js', 'excel-win32-16.01.js', 'excel-mac-16.00.js'] as const;
export type HostFile = (typeof HOST_FILES)[number];
/** All of them, or that of the web alone. */
export const hostFiles = (all: boolean): readonly HostFile[] => (all ? HOST_FILES : HOST_FILES.slice(0, 1));

/** What the library leaves in the page, as far as the tests use it. */
export interface Office {
  readonly CustomFunctions: typeof CustomFunctions;
  readonly Excel: typeof Excel;
  readonly OfficeExtension: {
    HostBridge: { init(bridge: Bridge): void };
    SessionBase: { _overrideSession: unknown };
    CommonUtility: { _doApiNotSupportedCheck: boolean };
  };
}
interface Bridge {
  onMessageFromHost?: (text: string) => void;
  sendMessageToHost(text: string): void;
}

/** Stands for whatever the library asks of a page: every property and every call gives another of the kind. */
const anything = (): object =>
  new Proxy(function () {}, {
    get: (_target, name) => (name === Symbol.toPrimitive ? () => '' : name === 'length' ? 0 : anything()),
    apply: () => anything(),
    construct: () => anything(),
    set: () => true,
  });

function page(timer: typeof setTimeout): Record<string, unknown> {
  const storage = { getItem: () => null, setItem() {} };
  const window: Record<string, unknown> = {
    console,
    setTimeout: timer,
    clearTimeout,
    setInterval,
    clearInterval,
    performance,
    URL,
    navigator: { userAgent: 'node', appVersion: '', language: 'en-US' },
    location: { href: 'https://localhost/', search: '', hash: '', protocol: 'https:', host: 'localhost' },
    document: anything(),
    addEventListener() {},
    removeEventListener() {},
    postMessage() {},
    sessionStorage: storage,
    localStorage: storage,
    XMLHttpRequest: class {},
    name: '',
  };
  return Object.assign(window, { window, self: window, top: window, parent: window });
}

/** What office.js itself defines before it loads the host's file. Error and ErrorCode are not among it. */
function loader(): object {
  const mappings: Record<string, unknown> = {};
  return {
    _association: { mappings, onchange() {} },
    associate: (id: string, run: unknown) => (mappings[id.toUpperCase()] = run),
  };
}

const byNumber = new Intl.Collator('en', { numeric: true });
const atLeast = (have: string, want: string): boolean => byNumber.compare(have, want) >= 0;

const scripts = new Map<HostFile, vm.Script>();
/** The library's file, read and compiled once. */
function scriptOf(file: HostFile): vm.Script {
  const known = scripts.get(file);
  if (known) return known;
  const made = new vm.Script(readFileSync(join(LIBRARY, file), 'utf8'), { filename: file });
  scripts.set(file, made);
  return made;
}

export interface HostOptions {
  readonly file?: HostFile;
  /** The API level that the host has; members beyond it are refused, as old hosts do. */
  readonly excelApi?: string;
  /** Whether Excel can wait for a cell that is being typed in. */
  readonly canWait?: boolean;
  /** The page's own timer; a page out of sight has one that goes off once a second. */
  readonly timer?: typeof setTimeout;
  /** Runs when office.js is there but the host's file is not: when our script is loaded. */
  readonly whileLoading?: (functions: typeof CustomFunctions) => void;
}

export function loadOffice(
  workbook: FakeWorkbook,
  {
    file = 'excel-web-16.00.js',
    excelApi = '1.15',
    canWait = true,
    timer = setTimeout,
    whileLoading,
  }: HostOptions = {},
): Office {
  const window = page(timer);
  window.CustomFunctions = loader();
  whileLoading?.(window.CustomFunctions as typeof CustomFunctions);
  vm.createContext(window);
  scriptOf(file).runInContext(window);

  const levels: Record<string, string> = { excelapi: excelApi, customfunctions: '1.9' };
  if (canWait) levels.delayforcelledit = '1.1';
  const isSetSupported = (name: string, version: string | number = '0'): boolean => {
    const level = levels[name.toLowerCase()];
    return level !== undefined && atLeast(level, String(version));
  };
  window.Office = Object.create(window.Office as object, {
    context: { value: { requirements: { isSetSupported } } },
  });

  const office = window as unknown as Office;
  office.OfficeExtension.CommonUtility._doApiNotSupportedCheck = true;
  office.OfficeExtension.SessionBase._overrideSession = wireTo(workbook);
  return office;
}

/** Takes the library's requests to the workbook, as JSON, the way they would travel. */
const wireTo = (workbook: FakeWorkbook) => ({
  _resolveRequestUrlAndHeaderInfo: () => Promise.resolve({ url: 'workbook://', headers: {} }),
  _createRequestExecutorOrNull() {
    const known = new Map<number, Item>();
    return {
      executeAsync(_data: unknown, flags: number, message: { Body: Batch }) {
        const batch = JSON.parse(JSON.stringify(message.Body)) as Batch;
        const reply: unknown = JSON.parse(JSON.stringify(workbook.answer(batch, known, flags)));
        return Promise.resolve({
          HttpStatusCode: 200,
          ErrorCode: null,
          ErrorMessage: null,
          Headers: {},
          Body: reply,
        });
      },
    };
  },
});

/** How the runtime names errors to Excel. */
const CODES: Readonly<Record<number, string>> = {
  1: '#N/A',
  2: 'lost',
  5: '#DIV/0!',
  6: '#NUM!',
  7: '#VALUE!',
  8: '#NULL!',
};

/** An error inside a spilled answer, as it travels. */
export interface SpilledError {
  type: 'Error';
  basicValue: string;
  errorType: string;
  message?: string;
}
/** What arrives in Excel for one cell: its value or rows of values, or an error with its sentence. */
export type Arrival =
  { readonly value: unknown } | { readonly error: string | undefined; readonly message: string };

/** A function and its arguments as Excel sends them: blocks of cells. */
export type Invocation = readonly [id: string, ...args: unknown[]];

/** An error value in a cell that is an argument. */
export const errorCell = (code: string) => ({ type: 'CustomFunctionError', code });

/** A cell with more than a value in it, such as a formatted number, as Excel sends it where it sends such at all. */
export const richCell = (content: object) => ({ value: JSON.stringify(content) });

const FLAGS = { errorsWelcome: 4, rich: 8 };
const INVOCATION = { messageCategory: 1, messageType: 1000 };

/** Gives a function that calls ours as Excel does: through the runtime in office.js, all calls in one message. */
export function excelCaller(office: Office, workbook: FakeWorkbook) {
  const bridge: Bridge = { sendMessageToHost() {} };
  office.OfficeExtension.HostBridge.init(bridge);
  let next = 1;
  return (invocations: readonly Invocation[], { rich = false } = {}): Promise<Arrival[]> =>
    new Promise((resolve) => {
      const first = next;
      next += invocations.length;
      const arrived = new Map<number, Arrival>();
      workbook.onMethod.SetInvocationArrayResults = ([rows]) => {
        for (const [id, ok, value, code] of rows as [number, boolean, unknown, number][])
          arrived.set(id, ok ? { value } : { error: CODES[code], message: value as string });
        if (arrived.size === invocations.length)
          resolve(invocations.map((_, i) => arrived.get(first + i) as Arrival));
      };
      const flags = FLAGS.errorsWelcome + (rich ? FLAGS.rich : 0);
      const entries = invocations.map(([id, ...args], i) => ({
        ...INVOCATION,
        targetId: '',
        message: [first + i, id, args, 'Sheet1!A1', flags],
      }));
      bridge.onMessageFromHost?.(JSON.stringify({ type: 3, message: { entries } }));
    });
}
