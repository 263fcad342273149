/** Serves dist/ to Excel over https, with the certificates that Office trusts on this machine. */
const https = require('node:https');
const path = require('node:path');
const staticFiles = require('./static-files.cjs');

const FOLDER = path.resolve(__dirname, '../../dist');
const PORT = Number(process.env.npm_package_config_dev_server_port ?? 3000);
/** Excel fetches functions.json from an address of its own. */
const HEADERS = { 'access-control-allow-origin': '*' };

/** The certificates come with the tool that starts Excel, wherever npm has put them. */
const { getHttpsServerOptions } = require(
  require.resolve('office-addin-dev-certs', { paths: [require.resolve('office-addin-debugging/cli.js')] }),
);

async function main() {
  const server = https.createServer(await getHttpsServerOptions(), staticFiles(FOLDER, HEADERS));
  server.listen(PORT, 'localhost', () =>
    console.log(`Serving the add-in at https://localhost:${PORT}/ (stop with Ctrl+C).`),
  );
}

main();
