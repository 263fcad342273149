/** The files of the grid's packages. */
const GRID = /@univerjs[\\/][\w-]+[\\/]lib[\\/]es[\\/][\w-]+\.js$/;

const FIELD = /_defineProperty\(this, "([A-Za-z_$][\w$]*)", /g;
const ACCESSOR = /\b[gs]et ([A-Za-z_$][\w$]*)\(/g;

/**
 * The packages of the grid set each field of each new object through a function, which no browser can make quick: a quarter of
 * the time to calculate a sheet. Here they assign them. That is the same but for a name that a class above has a getter or a
 * setter for, which TypeScript, in which they are written, forbids; fields of such a name are left as they are.
 */
function plainFields(source) {
  const accessors = new Set(Array.from(source.matchAll(ACCESSOR), ([, name]) => name));
  return source.replace(FIELD, (whole, name) => (accessors.has(name) ? whole : `this.${name} = (`));
}

/** For webpack. It comes before the rules of other loaders for these files, so that they get the text as it was. */
module.exports = function plainFieldsLoader(source) {
  return plainFields(source);
};
module.exports.plainFields = { test: GRID, loader: __filename };
module.exports.GRID = GRID;
module.exports.withPlainFields = plainFields;
