/** The file that this is about. */
const ENGINE = /@univerjs[\\/]engine-formula[\\/]lib[\\/]es[\\/]index\.js$/;

/**
 * What src/engine/mends reaches into, by the file that does: words of @univerjs/engine-formula 0.25.1, and how often they
 * stand there. Where one stands otherwise the engine was changed in that place, and the mend may do harm.
 */
const PLACES = {
  literals: [
    ['static create(rawValue, isIgnoreNumberPattern = false) {', 1],
    ['this.setValue(ValueObjectFactory.create(this.getToken(), isIgnoreNumberPattern));', 1],
    ['return ["=", ValueObjectFactory.create(str)];', 1],
  ],
  noIndex: [
    ['CELL_INVERTED_INDEX_CACHE', 14],
    ['if (rowsInCache.length > 0) {', 1],
  ],
  emptyResult: [
    ['_getValueObjectOfRuntimeData(variant) {', 1],
    ['this._getValueObjectOfRuntimeData(', 7],
    ['return objectValueToCellValue(variant);', 1],
  ],
  oneReading: [
    ['_registerFormulas(', 2],
    ['_createFDtree(unitId, sheetId, row, column, unitData, formulaDataItem) {', 1],
    ['FDtree.formula = formulaString;', 2],
    ['generateAstNode(tree.unitId, tree.formula, this._lexer,', 2],
    ['if (node.nodeType === 1) node.setRefOffset(refOffsetX, refOffsetY);', 2],
    ['const refOffsetX = tree.refOffsetX;', 2],
    ['refOffsetX: tree.refOffsetX,', 3],
    ['isAddress() {\n\t\treturn true;', 2],
  ],
  operators: [
    [
      'if (this._functionExecutor.name === "COMPARE") this._functionExecutor.setCompareType(this.getToken());',
      1,
    ],
    ...['PLUS', 'MINUS', 'MULTIPLY', 'DIVIDED', 'CONCATENATE', 'POWER', 'COMPARE'].map((name) => [
      `functionName = "${name}";`,
      name === 'MINUS' || name === 'DIVIDED' ? 2 : 1,
    ]),
    ['const result = this._functionExecutor.calculate(object1, object2);', 1],
    ['ALL_IMPLEMENTED_FUNCTIONS.concat(', 1],
    ['this._functionExecutors.set(func.name, func);', 1],
  ],
  references: [
    ['_defineProperty(this, "_refOffsetX", 0);', 2],
    ['_defineProperty(this, "_rangeData", {', 1],
    ['const { x, y } = this.getRefOffset();\n\t\tconst newRange = moveRangeByOffset(', 1],
  ],
  keys: [
    ['if (array && useCache) return array;', 1],
    ['FORMULA_REF_TO_ARRAY_CACHE.clear();', 4],
  ],
};

/** Throws where the engine no longer reads as it did when its mends were made. */
function checkPlaces(source, file) {
  for (const [mend, words] of Object.entries(PLACES))
    for (const [word, count] of words) {
      const found = source.split(word).length - 1;
      if (found !== count)
        throw new Error(
          `${file} is not as it was: "${word}" stands there ${found} times, not ${count}. See src/engine/mends/${mend}.ts.`,
        );
    }
  return source;
}

/** For webpack: the engine is built in as it is. */
module.exports = function mendedEngine(source) {
  return checkPlaces(source, this.resourcePath);
};
module.exports.checkPlaces = checkPlaces;
module.exports.PLACES = PLACES;
module.exports.mendedEngine = { test: ENGINE, loader: __filename };
