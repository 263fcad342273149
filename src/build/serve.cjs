const http = require('node:http');
const staticFiles = require('./static-files.cjs');

/** The page itself says what it may load; these are what only a server can say. */
const HEADERS = {
  'content-security-policy': "frame-ancestors 'none'",
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
};

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
  const server = http.createServer(staticFiles(folder, HEADERS));
  const taken = await listenNear(server, port);
  const close = () =>
    new Promise((resolve) => {
      server.close(resolve);
      server.closeAllConnections();
    });
  return { url: `http://127.0.0.1:${taken}/`, close };
};
