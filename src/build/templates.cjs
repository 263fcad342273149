const fs = require('node:fs');
const path = require('node:path');
const Ajv = require('ajv');
const loadTs = require('./load-ts.cjs');

const FOLDER = path.resolve(__dirname, '../../templates');
const CHECKS = path.resolve(__dirname, '../published');
const SCHEMA = 'schema.json';

/** The schema and the checks of `src/sheets`, read once for each reading of the folder. */
let checks;

function readChecks() {
  const schema = JSON.parse(fs.readFileSync(path.join(FOLDER, SCHEMA), 'utf8'));
  const hasShape = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(schema);
  return {
    hasShape,
    faults: loadTs('sheets/checkTemplate.ts').faults,
    partnerFaults: loadTs('sheets/lookUpFaults.ts').partnerFaults,
  };
}

/** What the schema says against a template, one line a fault: file, place, reason. */
function shapeFaults(file, template, hasShape) {
  if (hasShape(template)) return [];
  return hasShape.errors
    .filter((e) => e.keyword !== 'if')
    .map((e) => {
      const what = e.params.additionalProperty ? `${e.message} (${e.params.additionalProperty})` : e.message;
      return `${file}: ${e.instancePath.slice(1) || 'the whole'}: ${what}`;
    });
}

/** Reads one template from its text. Throws with every fault: file, place, reason. */
function readTemplate(file, text) {
  const template = parse(file, text);
  checks ??= readChecks();
  const shape = shapeFaults(file, template, checks.hasShape);
  const wrong =
    shape.length > 0 ? shape : checks.faults(template).map(({ at, reason }) => `${file}: ${at}: ${reason}`);
  if (wrong.length === 0 && `${template.id}.json` !== file)
    wrong.push(`${file}: id: must be the file's name, ${file.replace(/\.json$/, '')}`);
  if (wrong.length > 0) throw new Error(wrong.join('\n'));
  const { $schema: _, ...content } = template;
  return content;
}

function parse(file, text) {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Error(`${file}: the whole: is no JSON (${error.message})`, { cause: error });
  }
}

/** JSON files of a folder by name, in order. */
const jsonFiles = (folder) =>
  fs
    .readdirSync(folder)
    .filter((file) => file.endsWith('.json') && file !== SCHEMA)
    .sort()
    .map((file) => [file, fs.readFileSync(path.join(folder, file), 'utf8')]);

/** The one sheet without a file: it shows the published checks, and is made from them. */
function readProof() {
  const published = jsonFiles(CHECKS).flatMap(([file, text]) => parse(file, text).checks);
  return ['proof.json', JSON.stringify(loadTs('build/proofSheet.ts').proofTemplate(published))];
}

/** From here on a template is a long one. All others together have no more. */
const LONG = 60_000;

/**
 * Every template of the project and of other folders, checked, in the order of their names: short ones, of long ones the tops
 * that their pictures show, and long ones. A page starts with the first two.
 */
function readTemplates(others = []) {
  checks = undefined;
  const read = [...[FOLDER, ...others].flatMap(jsonFiles), readProof()]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([file, text]) => readTemplate(file, text));
  const wrong = read.flatMap((one) =>
    checks.partnerFaults(one, read).map(({ at, reason }) => `${one.id}.json: ${at}: ${reason}`),
  );
  if (wrong.length > 0) throw new Error(wrong.join('\n'));
  const isLong = (template) => JSON.stringify(template).length > LONG;
  const long = read.filter(isLong);
  const { topOf } = loadTs('sheets/topOf.ts');
  return { short: read.filter((template) => !isLong(template)), tops: long.map(topOf), long };
}

/** All of them, as they are. */
function allTemplates(others) {
  const { short, long } = readTemplates(others);
  return [...short, ...long];
}

module.exports = { FOLDER, CHECKS, allTemplates, readTemplate, readTemplates };
