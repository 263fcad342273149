/** The files that this is about, by the name of their package. */
const MENDED =
  /@univerjs[\\/](engine-formula|sheets|sheets-formula|sheets-table)[\\/]lib[\\/]es[\\/]index\.js$/;

/**
 * What src/engine/mends reaches into, by the package and the file that does: words of @univerjs 0.25.1, and how often they
 * stand there. Where one stands otherwise the engine was changed in that place, and the mend may do harm.
 */
const PLACES = {
  'engine-formula': {
    literals: [
      ['static create(rawValue, isIgnoreNumberPattern = false) {', 1],
      ['this.setValue(ValueObjectFactory.create(this.getToken(), isIgnoreNumberPattern));', 1],
      ['return ["=", ValueObjectFactory.create(str)];', 1],
    ],
    noIndex: [
      ['CELL_INVERTED_INDEX_CACHE', 14],
      ['if (rowsInCache.length > 0) {', 1],
    ],
    missingSheet: [
      ['_checkIfWorksheetMiss() {', 1],
      ['_getNode(tokenTrim, isLexerNode, isPrepareMerge, param) {', 1],
      ['referenceObject.setForcedSheetId(currentConfigService.getSheetNameMap());', 1],
    ],
    indirect: [
      ['_setDefault(object) {', 1],
      ['object.setDefaultSheetId(this.subUnitId);', 2],
      ['if (this._functionExecutor.needsSheetsInfo) this._setSheetsInfo();', 1],
    ],
    spilled: [
      ['mergeArrayFormulaCellData(unitData) {', 1],
      [
        'if (this._arrayFormulaCellData[unitId]) this._arrayFormulaCellData[unitId][sheetId] = arrayFormulaCellMatrixData.getData();',
        2,
      ],
    ],
    emptyResult: [
      ['_getValueObjectOfRuntimeData(variant) {', 1],
      ['this._getValueObjectOfRuntimeData(', 7],
      ['return objectValueToCellValue(variant);', 1],
    ],
    dependenciesAnew: [
      [
        'if (this._currentConfigService.isForceCalculate()) this._dependencyManagerService.reset();\n\t\tthis._registerFormulas(',
        1,
      ],
      ['this._dependencyManagerService.addDependencyRTreeCache(tree);', 1],
    ],
    readFormulasOnce: [
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
    cellsByValue: [
      ['if (array && useCache) return array;', 1],
      ['FORMULA_REF_TO_ARRAY_CACHE.clear();', 4],
    ],
    'reading/lexer': [
      ['treeBuilder(formulaString, transformSuffix = true) {', 1],
      ['const lexerNode = lexer.treeBuilder(formulaString);', 1],
      ['if (ERROR_TYPE_SET.has(lexerNode)) return ErrorNode.create(lexerNode);', 1],
      ['getValueByName(unitId, name) {', 1],
      ['if (definedSheetId === "AllDefaultWorkbook") return tokenLike;', 1],
    ],
    'reading/build': [
      ['if (token === "P_1") {', 1],
      ['new NullNode("R_1").setParent(parent);', 1],
      ['if (OPERATOR_TOKEN_SET.has(tokenTrim)) return this.create(tokenTrim);', 1],
      ['if (token === "LET") {', 1],
      ['if (param.getToken().trim().toUpperCase() !== "LAMBDA") return;', 1],
      ['if (currentLambdaPrivacyVar.has(token)) {', 1],
      ['[Cube, "CUBE"]', 1],
    ],
    'reading/nodes': [
      ['if (param.getToken() === "R_1") return new AstRootNode("R_1");', 1],
      ['if (node.nodeType === 10) return true;', 1],
      ['else if (tokenTrim === "@") return new PrefixNode(this._runtimeService, tokenTrim);', 1],
      ['_handlerAT(value) {', 1],
    ],
    keptTrees: [
      ['if (formulaString.length <= 64) return formulaString;', 1],
      ['if (key.includes(token)) FORMULA_AST_CACHE.delete(key);', 1],
      ['const FORMULA_REF_TO_ARRAY_CACHE = new FormulaAstLRU(', 1],
      ['this._dirtySuperTableMap = config.dirtySuperTableMap || {};', 1],
      ['if (!noCache) FORMULA_AST_CACHE.set(', 1],
    ],
    quotes: [
      ['sequenceNodesBuilder(formulaString) {', 1],
      ['if (nextCurrentString && nextCurrentString === "\\"") cur++;', 1],
      ['let formulaString = formulaStringRaw.replace(/\\r\\n$|\\r|\\n/g, " ");', 1],
    ],
    texts: [
      [
        'this._getResult(textValue, colDelimiterValue, rowDelimiterValue, ignoreEmptyValue, matchModeValue, padWithValue)',
        1,
      ],
    ],
    countEffort: [
      ['_execute(node, refOffsetX = 0, refOffsetY = 0) {', 1],
      ['setCurrent(row, column, rowCount, columnCount, sheetId, unitId) {', 1],
      ['toArrayValueObject(useCache = true) {', 1],
    ],
  },
  sheets: {
    deletedLines: [['const handleBaseRemoveRange = (_removeRange, _targetRange) => {', 1]],
    tableCopy: [
      ['id: COPY_SHEET_COMMAND_ID,', 2],
      ['config.id = newSheetId;', 1],
      ['sheet: sheetConfigWithFirstChunk,', 1],
    ],
    tableMove: [
      ['const MoveRowsMutation = {', 1],
      ['const MoveColsMutation = {', 1],
    ],
  },
  'sheets-formula': {
    deletedLines: [
      ['_getFormulaReferenceMoveInfo(formulaData, unitSheetNameMap, formulaReferenceMoveParam) {', 1],
      ['_getUpdateDefinedNameMutations(workbook, moveParams) {', 1],
      ['} else if (type === 5) {', 1],
      ['} else if (type === 6) {', 1],
    ],
    tableColumns: [
      ['_getUpdateFormula(command) {', 1],
      ['} else if (type === 6) {', 1],
      ['__decorateParam(7, Inject(Injector))\n], UpdateFormulaController);', 1],
    ],
    ownSheet: [
      [
        'sheetName: preserveSheetQualifier || !(isCurrentFormulaWorkbook && rewrittenSheetId === currentFormulaSheetId) ? rewrittenSheetName : "",',
        1,
      ],
      [
        'newFormulaDataItem.setValue(row, column, { f: `=${generateStringWithSequence(newSequenceNodes)}` });',
        1,
      ],
    ],
  },
  'sheets-table': {
    tableShift: [
      ['updateTableRange(unitId, tableId, config) {', 1],
      ['setTableByConfig(unitId, tableId, config) {', 1],
      ['this._tableManager.updateTableRange(unitId, table.getId(), { newRange: {', 4],
    ],
    tableMove: [['if (commandInfo.id === InsertRowMutation.id) {', 1]],
    tableCopy: [
      ['subUnitId: targetSubUnitId,\n\t\t\t\t\t\t\tname: tableJson.name,', 1],
      ['} else if (commandInfo.id === CopySheetCommand.id) {', 1],
    ],
    tableColumns: [['const SHEET_TABLE_REMOVE_COL_COMMAND_ID = "sheet.command.table-remove-col";', 1]],
    tableInserted: [
      ['operationTableRowCol(unitId, tableId, config) {', 1],
      [
        'if (columnsJson === null || columnsJson === void 0 ? void 0 : columnsJson[i]) column.fromJSON(columnsJson[i]);',
        1,
      ],
      ['this._columns.forEach((column) => {\n\t\t\tcolumns.push(column.toJSON());', 1],
    ],
    tableCut: [
      ['endRow: tableRange.endRow - removeRowCount', 1],
      ['if (range.startColumn < tableRange.startColumn) this._tableManager.updateTableRange(', 1],
      ['const removeColumnCount = range.endColumn - tableRange.startColumn + 1;', 1],
      ['if (updateRange) this.updateTableRange(unitId, tableId, updateRange);', 1],
    ],
  },
};

/** Throws where a package no longer reads as it did when its mends were made. */
function checkPlaces(source, file) {
  const [, name] = MENDED.exec(file);
  for (const [mend, words] of Object.entries(PLACES[name]))
    for (const [word, count] of words) {
      const found = source.split(word).length - 1;
      if (found !== count)
        throw new Error(
          `${file} is not as it was: "${word}" stands there ${found} times, not ${count}. See src/engine/mends/${mend}.ts.`,
        );
    }
  return source;
}

/** For webpack: the packages are built in as they are. */
module.exports = function mendedEngine(source) {
  return checkPlaces(source, this.resourcePath);
};
module.exports.checkPlaces = checkPlaces;
module.exports.PLACES = PLACES;
module.exports.mendedEngine = { test: MENDED, loader: __filename };
