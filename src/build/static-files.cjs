const fs = require('node:fs/promises');
const path = require('node:path');
const { createHash } = require('node:crypto');

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.xml': 'text/xml; charset=utf-8',
  '.png': 'image/png',
  '.txt': 'text/plain; charset=utf-8',
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

async function answer(folder, headers, request, response) {
  const plain = (status, text, more = {}) =>
    response.writeHead(status, { ...headers, ...more, 'content-type': TYPES['.txt'] }).end(text);
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return plain(405, 'Only GET and HEAD.', { allow: 'GET, HEAD' });
  const file = fileOf(folder, request.url);
  const content = file && (await contentOf(folder, file));
  if (!content) return plain(404, 'Not found.');
  const etag = `"${createHash('sha256').update(content).digest('base64url')}"`;
  if (request.headers['if-none-match'] === etag) return response.writeHead(304, { ...headers, etag }).end();
  response.writeHead(200, {
    ...headers,
    etag,
    'content-type': TYPES[path.extname(file)] ?? 'application/octet-stream',
    'content-length': content.length,
  });
  response.end(request.method === 'HEAD' ? undefined : content);
}

/** Answers requests with the files of a folder, each time as they are now, and with these headers. */
module.exports = (folder, headers) => (request, response) => {
  const all = { 'cache-control': 'no-cache', ...headers };
  answer(folder, all, request, response).catch((error) => {
    console.error(error);
    response.writeHead(500, all).end();
  });
};
