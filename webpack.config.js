const command = require('./src/build/webpack-command.cjs');
const excel = require('./src/build/webpack-excel.cjs');
const scripts = require('./src/build/webpack-scripts.cjs');
const workbench = require('./src/build/webpack-workbench.cjs');

/** One build for each host; each writes its own part of dist/ and empties no other's. */
module.exports = (env = {}, argv = {}) => [excel, workbench, command, scripts].map((make) => make(env, argv));
