import { mkdtemp, mkdir, rm, symlink, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { createServer, request, type RequestOptions } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

interface Server {
  readonly url: string;
  close(): Promise<void>;
}
const require = createRequire(import.meta.url);
const serve: (folder: string, port?: number) => Promise<Server> = require('../../src/build/serve.cjs');
const serveHere: (
  folder: string,
  port: number,
) => Promise<Server> = require('../../src/build/serve-here.cjs');

let folder: string;
let server: Server;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'serve-'));
  const site = join(folder, 'site');
  await mkdir(site);
  await Promise.all([
    writeFile(join(folder, 'secret.txt'), 'not for the page'),
    writeFile(join(site, 'index.html'), '<p>page</p>'),
    writeFile(join(site, 'a b.js'), 'void 0'),
    symlink(join(folder, 'secret.txt'), join(site, 'link.txt')),
  ]);
  server = await serve(site);
});
afterAll(async () => {
  await server.close();
  await rm(folder, { recursive: true });
});

/** Sends the path as it stands: fetch would tidy it. Gives where the answer leads, too. */
const answered = (path: string, options: RequestOptions) =>
  new Promise<{ status: number | undefined; location: string | undefined; body: string }>(
    (resolve, reject) => {
      const { hostname, port } = new URL(server.url);
      request({ hostname, port, path, ...options }, (response) => {
        let body = '';
        response.on('data', (part) => (body += part));
        response.on('end', () =>
          resolve({ status: response.statusCode, location: response.headers.location, body }),
        );
      })
        .on('error', reject)
        .end();
    },
  );

const ask = async (path: string, method = 'GET') => {
  const { status, body } = await answered(path, { method });
  return { status, body };
};

/** Asks for the page by another name of its address. */
const asked = (path: string, host: string) => answered(path, { headers: { host } });

it('serves the page and its files with their types', async () => {
  const page = await fetch(server.url);
  expect([page.status, page.headers.get('content-type'), await page.text()]).toEqual([
    200,
    'text/html; charset=utf-8',
    '<p>page</p>',
  ]);
  const script = await fetch(`${server.url}a%20b.js?v=1`);
  expect([script.status, script.headers.get('content-type')]).toEqual([
    200,
    'text/javascript; charset=utf-8',
  ]);
  expect(script.headers.get('x-content-type-options')).toBe('nosniff');
});

it.each([
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/..%2fsecret.txt',
  '/link.txt',
  '/none.js',
  '/%',
  '/index.html%00',
  '//secret.txt',
])('gives nothing for %s', async (path) => {
  const { status, body } = await ask(path);
  expect([status, body]).toEqual([404, 'Not found.']);
});

it('only reads', async () => {
  expect((await ask('/', 'POST')).status).toBe(405);
  expect(await ask('/', 'HEAD')).toEqual({ status: 200, body: '' });
});

it('says when a browser already has the file', async () => {
  const etag = (await fetch(server.url)).headers.get('etag') ?? '';
  expect((await fetch(server.url, { headers: { 'if-none-match': etag } })).status).toBe(304);
});

it.each(['/', '/index.html', '/?v=1'])(
  'sends whoever asks for %s by another name to the one address that workbooks are kept for',
  async (path) => {
    const { port } = new URL(server.url);
    const answer = await asked(path, `localhost:${port}`);
    expect([answer.status, answer.location]).toEqual([307, server.url]);
  },
);

it('still gives what was kept under another name, and the files that both need', async () => {
  const { port } = new URL(server.url);
  for (const path of ['/?here', '/a%20b.js']) {
    const { status, location } = await asked(path, `localhost:${port}`);
    expect([status, location]).toEqual([200, undefined]);
  }
});

describe('a port that is taken', () => {
  const portOf = (url: string): number => Number(new URL(url).port);

  it('by the page itself is the address still', async () => {
    const again = await serveHere(folder, portOf(server.url));
    expect(again).toMatchObject({ url: server.url, isNew: false });
    await again.close();
    expect((await fetch(server.url)).status).toBe(200);
  });

  it('by another program is told, with the way back: the page starts nowhere else', async () => {
    const other = createServer((_, response) => response.end('other'));
    await new Promise<void>((ready) => other.listen(0, '127.0.0.1', ready));
    const { port } = other.address() as AddressInfo;
    await expect(serveHere(folder, port)).rejects.toThrow(
      new RegExp(`port ${port}.*http://127\\.0\\.0\\.1:${port}/.*--port ${port + 1}`, 's'),
    );
    await new Promise((closed) => other.close(closed));
    const free = await serveHere(folder, port);
    expect(free).toMatchObject({ url: `http://127.0.0.1:${port}/`, isNew: true });
    await free.close();
  });
});
