/**
 * Writes into templates/schema.json what each kind of `src/book/kinds` says of itself: `npm run schema`.
 * A test fails while the schema is not what this would write.
 */
const fs = require('node:fs');
const path = require('node:path');
const prettier = require('prettier');
const loadTs = require('./load-ts.cjs');

const SCHEMA = path.resolve(__dirname, '../../templates/schema.json');

/** Where the schema has the properties of each part of a template. */
const PROPERTIES = {
  template: (schema) => schema.properties,
  form: ({ definitions }) => definitions.form.properties,
  table: ({ definitions }) => definitions.table.properties,
  field: ({ definitions }) => definitions.form.properties.fields.items.properties,
  column: ({ definitions }) => definitions.table.properties.columns.items.properties,
  chart: ({ definitions }) => definitions.chart.properties,
};

/** The schema with what these kinds say. */
function withKinds(schema, checks) {
  const made = structuredClone(schema);
  for (const { property, of, shape } of checks)
    for (const part of of) PROPERTIES[part](made)[property] = shape;
  return made;
}

async function write() {
  const made = withKinds(JSON.parse(fs.readFileSync(SCHEMA, 'utf8')), loadTs('book/kinds/index.ts').CHECKS);
  const options = { ...(await prettier.resolveConfig(SCHEMA)), parser: 'json' };
  fs.writeFileSync(SCHEMA, await prettier.format(JSON.stringify(made, null, 2), options));
}

module.exports = { SCHEMA, withKinds };

if (require.main === module) void write();
