/**
 * `npm run check:manifest -- FOLDER` checks manifest.xml, and dist/manifest.xml where there is one, against our own rules and
 * against the schemas (.xsd files) in the folder. Without a folder only our own rules are checked.
 */
const fs = require('node:fs');
const path = require('node:path');
const { validateXML } = require('xmllint-wasm');
const { inBuild, inSources, manifestFaults } = require('./manifest-rules.cjs');

const ROOT = path.resolve(__dirname, '../..');
const MAIN_SCHEMA = 'OfficeAppManifestV1_1.xsd';

function schemasIn(folder) {
  const names = fs.existsSync(folder) ? fs.readdirSync(folder) : [];
  return names
    .filter((name) => name.endsWith('.xsd'))
    .map((fileName) => ({ fileName, contents: fs.readFileSync(path.join(folder, fileName), 'utf8') }));
}

async function schemaFaults(contents, schemas) {
  const schema = schemas.find(({ fileName }) => fileName === MAIN_SCHEMA);
  if (!schema) return [`the folder of schemas holds no ${MAIN_SCHEMA}`];
  const preload = schemas.filter((other) => other !== schema);
  const { errors } = await validateXML({ xml: { fileName: 'manifest.xml', contents }, schema, preload });
  return errors.map(({ message, loc }) => (loc ? `line ${loc.lineNumber}: ${message}` : message));
}

async function main(folder) {
  const schemas = folder === undefined ? undefined : schemasIn(path.resolve(folder));
  if (!schemas) console.log('No folder of schemas given: checking our own rules only.');
  const manifests = [['manifest.xml', inSources(ROOT)]];
  if (fs.existsSync(path.join(ROOT, 'dist/manifest.xml')))
    manifests.push(['dist/manifest.xml', inBuild(path.join(ROOT, 'dist'))]);
  for (const [name, look] of manifests) {
    const xml = fs.readFileSync(path.join(ROOT, name), 'utf8');
    const faults = [...manifestFaults(xml, look), ...(schemas ? await schemaFaults(xml, schemas) : [])];
    for (const fault of faults) console.error(`${name}: ${fault}`);
    if (faults.length > 0) process.exitCode = 1;
    else console.log(`${name}: in order.`);
  }
}

main(process.argv[2]);
