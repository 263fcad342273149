const http = require('node:http');
const staticFiles = require('./static-files.cjs');

/** The page itself says what it may load; these are what only a server can say. */
const NAME = 'Sweeptable';
const HEADERS = {
  server: NAME,
  'content-security-policy': "frame-ancestors 'none'",
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
};

const listen = (server, port) =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, HOST, () => {
      server.off('error', reject);
      resolve(server.address().port);
    });
  });

const HOST = '127.0.0.1';
const address = (port) => `http://${HOST}:${port}/`;
const PAGE = /^\/(?:index\.html)?(?:\?(?!here)|#|$)/;

/**
 * A browser keeps a workbook for each name of an address by itself: the page is given under one of them alone, and whoever asks
 * by another, as localhost, is sent there. What was kept under another name before is found with ?here behind it.
 */
function elsewhere({ headers, url, socket }) {
  const home = address(socket.localPort);
  return PAGE.test(url) && `http://${headers.host}/` !== home ? home : undefined;
}

/** Serves the files of a folder to this computer only. Gives the address and a way to stop. Port 0 takes any that is free. */
async function serve(folder, port = 0) {
  const files = staticFiles(folder, HEADERS);
  const server = http.createServer((request, response) => {
    const location = elsewhere(request);
    if (location === undefined) files(request, response);
    else response.writeHead(307, { ...HEADERS, 'cache-control': 'no-store', location }).end();
  });
  const taken = await listen(server, port);
  const close = () =>
    new Promise((resolve) => {
      server.close(resolve);
      server.closeAllConnections();
    });
  return { url: address(taken), close };
}

module.exports = Object.assign(serve, { address, NAME });
