import { mkdtemp, mkdir, rm, symlink, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';

interface Server {
  readonly url: string;
  close(): Promise<void>;
}
const serve: (folder: string, port?: number) => Promise<Server> = createRequire(import.meta.url)(
  '../../src/build/serve.cjs',
);

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

/** Sends the path as it stands: fetch would tidy it. */
const ask = (path: string, method = 'GET') =>
  new Promise<{ status: number | undefined; body: string }>((resolve, reject) => {
    const { hostname, port } = new URL(server.url);
    request({ hostname, port, path, method }, (response) => {
      let body = '';
      response.on('data', (part) => (body += part));
      response.on('end', () => resolve({ status: response.statusCode, body }));
    })
      .on('error', reject)
      .end();
  });

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

it('takes the next free port when the one asked for is taken', async () => {
  const taken = Number(new URL(server.url).port);
  const next = await serve(folder, taken);
  expect(Number(new URL(next.url).port)).toBeGreaterThan(taken);
  await next.close();
});
