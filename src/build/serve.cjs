const fs = require('node:fs/promises');
const http = require('node:http');
const path = require('node:path');
const { createHash } = require('node:crypto');

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.txt': 'text/plain; charset=utf-8',
  '.woff2': 'font/woff2',
};

/** The page itself says what it may load; these are what only a server can say. */
const HEADERS = {
  'cache-control': 'no-cache',
  'content-security-policy': "frame-ancestors 'none'",
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
};

const MISSING = new Set(['ENOENT', 'ENOTDIR', 'EISDIR']);

/** The file an address means, or nothing for an address that leaves the folder or cannot be read. */
function fileOf(folder, address) {
  let name;
  try {
    name = decodeURIComponent(address.split(/[?#]/, 1)[0]);
  } catch {
    return undefined; // a broken % sequence
  }
  if (name.includes('\0')) return undefined;
  const file = path.join(folder, name.endsWith('/') ? `${name}index.html` : name);
  const inside = path.relative(folder, file);
  return inside.startsWith('..') || path.isAbsolute(inside) ? undefined : file;
}

/** Follows links before looking, so that none of them leads out of the folder. */
async function contentOf(folder, file) {
  try {
    const [root, real] = await Promise.all([fs.realpath(folder), fs.realpath(file)]);
    return real.startsWith(root + path.sep) ? await fs.readFile(real) : undefined;
  } catch (error) {
    if (MISSING.has(error.code)) return undefined;
    throw error;
  }
}

async function answer(folder, request, response) {
  const plain = (status, text, more = {}) =>
    response.writeHead(status, { ...HEADERS, ...more, 'content-type': TYPES['.txt'] }).end(text);
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return plain(405, 'Only GET and HEAD.', { allow: 'GET, HEAD' });
  const file = fileOf(folder, request.url);
  const content = file && (await contentOf(folder, file));
  if (!content) return plain(404, 'Not found.');
  const etag = `"${createHash('sha256').update(content).digest('base64url')}"`;
  if (request.headers['if-none-match'] === etag) return response.writeHead(304, { ...HEADERS, etag }).end();
  response.writeHead(200, {
    ...HEADERS,
    etag,
    'content-type': TYPES[path.extname(file)] ?? 'application/octet-stream',
    'content-length': content.length,
  });
  response.end(request.method === 'HEAD' ? undefined : content);
}

const listen = (server, port) =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve(server.address().port);
    });
  });

/** Listens on the port asked for, or on the next free one of the twenty after it. Port 0 takes any. */
async function listenNear(server, port) {
  for (let next = port; ; next++) {
    try {
      return await listen(server, next);
    } catch (error) {
      if (error.code !== 'EADDRINUSE' || next >= port + 20) throw error;
    }
  }
}

/** Serves the files of a folder to this computer only. Gives the address and a way to stop. */
module.exports = async function serve(folder, port = 0) {
  const server = http.createServer((request, response) => {
    answer(folder, request, response).catch((error) => {
      console.error(error);
      response.writeHead(500, HEADERS).end();
    });
  });
  const taken = await listenNear(server, port);
  const close = () =>
    new Promise((resolve) => {
      server.close(resolve);
      server.closeAllConnections();
    });
  return { url: `http://127.0.0.1:${taken}/`, close };
};
