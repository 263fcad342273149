/** Serves dist/ to Excel over https, with the certificates that Office trusts on this machine. */
const fs = require('node:fs');
const https = require('node:https');
const path = require('node:path');
const { getHttpsServerOptions } = require('office-addin-dev-certs');

const FOLDER = path.resolve(__dirname, '../../dist');
const PORT = Number(process.env.npm_package_config_dev_server_port ?? 3000);
const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.xml': 'text/xml; charset=utf-8',
};

/** The file for an address; undefined where there is none, or none inside the folder. */
function fileFor(address) {
  let name;
  try {
    name = decodeURIComponent(address.split(/[?#]/, 1)[0]);
  } catch {
    return undefined; // a broken % sequence
  }
  if (name.includes('\0')) return undefined;
  const file = path.join(FOLDER, name);
  return file.startsWith(FOLDER + path.sep) && fs.statSync(file, { throwIfNoEntry: false })?.isFile()
    ? file
    : undefined;
}

function answer(request, response) {
  const file = fileFor(request.url);
  if (!file) return response.writeHead(404, { 'content-type': 'text/plain' }).end('Not here.');
  response.writeHead(200, {
    'content-type': TYPES[path.extname(file)] ?? 'application/octet-stream',
    'access-control-allow-origin': '*',
    'cache-control': 'no-cache',
  });
  return fs.createReadStream(file).pipe(response);
}

async function main() {
  const server = https.createServer(await getHttpsServerOptions(), answer);
  server.listen(PORT, 'localhost', () =>
    console.log(`Serving the add-in at https://localhost:${PORT}/ (stop with Ctrl+C).`),
  );
}

main();
