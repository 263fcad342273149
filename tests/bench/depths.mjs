import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const loadTs = require('../../src/build/load-ts.cjs');
const { allTemplates } = require('../../src/build/templates.cjs');
const { depthOf } = loadTs('sheets/checkTemplate.ts');

/** How many of our functions stand one behind the other on the longest path of each sheet: Excel waits for each. */
for (const template of allTemplates())
  console.log(JSON.stringify({ measure: `depth of ${template.id}`, functions: depthOf(template) }));
