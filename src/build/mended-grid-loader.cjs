/** The packages of the grid, 0.25.1, that this is about. */
const PACKAGE = /@univerjs[\\/]([\w-]+)[\\/]lib[\\/]es[\\/]index\.js$/;

/** Of each package what stands there, once, and what is put in its place. */
const MENDS = {
  'sheets-ui': [
    // Shift+Tab and Shift+Enter go on to the selection before: of the first one that is the last, not one before the first,
    // which is none, so that nothing would be selected any more.
    [
      'const nextSelection = currentSelectionIndex + delta !== selections.length ? selections[currentSelectionIndex + delta] : selections[0];',
      'const nextSelection = selections.at((currentSelectionIndex + delta) % selections.length);',
    ],
    // Enter goes on below the cell where Tab began, but only from the cell that Tab led to: whoever has chosen another one
    // meanwhile begins anew, and would be led away from it.
    [
      `const shortcutExperienceParam = shortcutExperienceService.getCurrentBySearch({
			unitId,
			sheetId,
			keycode: KeyCode.TAB
		});`,
      `const began = { unitId, sheetId, keycode: KeyCode.TAB };
		let shortcutExperienceParam = shortcutExperienceService.getCurrentBySearch(began);
		if (shortcutExperienceParam && !Rectangle.equals(shortcutExperienceParam.led, primary)) {
			shortcutExperienceService.remove(began);
			shortcutExperienceParam = undefined;
		}`,
    ],
    [
      `		if (isLastCell) {
			selections[currentSelectionIndex].primary = null;`,
      `		shortcutExperienceParam = shortcutExperienceService.getCurrentBySearch(began);
		if (shortcutExperienceParam) shortcutExperienceParam.led = resultRange.primary;
		if (isLastCell) {
			selections[currentSelectionIndex].primary = null;`,
    ],
    // Every text in sight is read as a date, a time and a number at each draw, to mark it as a text that looks like one. We have
    // no such marks, so nothing need be read: it was a third of the drawing.
    [
      'const FORCE_STRING_MARK = {',
      'if (this._configService.getConfig("sheets-ui.config").disableForceStringMark) return;\n\t\tconst FORCE_STRING_MARK = {',
    ],
    // Cells that are written in the same step in which the sheet in view goes or comes back: there is nothing of it to be drawn
    // anew, and the step, which would break off here, goes on.
    [
      'const { rowHeightAccumulation, columnWidthAccumulation, rowHeaderWidth, columnHeaderHeight } = this._sheetSkeletonManagerService.getCurrentParam().skeleton;',
      'const inView = this._sheetSkeletonManagerService.getCurrentParam()?.skeleton; if (!inView) return []; const { rowHeightAccumulation, columnWidthAccumulation, rowHeaderWidth, columnHeaderHeight } = inView;',
    ],
    // Beside the line in which a cell is written there is what ends the writing, while somebody writes, and else what leads to our
    // functions. The grid has all three at all times, as signs without names, two of them coloured by what they mean.
    [
      `						children: [
							/* @__PURE__ */ jsx("span", {
								className: clsx("univer-flex univer-items-center univer-justify-center univer-rounded univer-p-1 univer-text-base dark:!univer-text-white", { "univer-cursor-pointer univer-text-red-600 hover:univer-bg-gray-100 dark:!univer-text-green-400 dark:hover:!univer-bg-gray-700": iconActivated }),
								onClick: handleCloseBtnClick,
								children: /* @__PURE__ */ jsx(CloseIcon, {})
							}),
							/* @__PURE__ */ jsx("span", {
								className: clsx("univer-flex univer-items-center univer-justify-center univer-rounded univer-p-1 univer-text-base dark:!univer-text-white", { "univer-cursor-pointer univer-text-green-600 hover:univer-bg-gray-100 dark:!univer-text-red-400 dark:hover:!univer-bg-gray-700": iconActivated }),
								onClick: handleConfirmBtnClick,
								children: /* @__PURE__ */ jsx(CheckMarkIcon, {})
							}),
							/* @__PURE__ */ jsx("span", {
								className: "univer-flex univer-cursor-pointer univer-items-center univer-justify-center univer-rounded univer-p-1 univer-text-base hover:univer-bg-gray-100 dark:!univer-text-white dark:hover:!univer-bg-gray-700",
								onClick: handlerFxBtnClick,
								children: /* @__PURE__ */ jsx(FxIcon, {})
							})
						]`,
      `						"data-beside-formula": true,
						children: iconActivated ? [["Leave as it was", handleCloseBtnClick, CloseIcon], ["Take what is written", handleConfirmBtnClick, CheckMarkIcon]].map(([title, onClick, Icon]) => jsx("button", { type: "button", title, "aria-label": title, tabIndex: -1, onClick, children: jsx(Icon, {}) }, title)) : [jsx("button", { type: "button", title: "All functions, with what they take and give", onClick: () => dispatchEvent(new Event("sweeptable-functions")), children: "Functions" }, "functions")]`,
    ],
    // Cells of a table can be copied and pasted in part, and emptied, as others can, and as they can by keys.
    ...['copySpecial', 'pasteSpecial'].map((entry) => [
      `title: "sheets-ui.rightClick.${entry}",
		hidden$: getObservableWithExclusiveRange$(accessor, getMenuHiddenObservable(accessor, UniverInstanceType.UNIVER_SHEET))`,
      `title: "sheets-ui.rightClick.${entry}",
		hidden$: getMenuHiddenObservable(accessor, UniverInstanceType.UNIVER_SHEET)`,
    ]),
    [
      `title: "sheets-ui.rightClick.clearContent",
		disabled$: getObservableWithExclusiveRange$(accessor, getCurrentRangeDisable$(accessor, {
			workbookTypes: [WorkbookEditablePermission],
			worksheetTypes: [WorksheetEditPermission, WorksheetSetCellValuePermission],
			rangeTypes: [RangeProtectionPermissionEditPoint]
		})),`,
      `title: "sheets-ui.rightClick.clearContent",
		disabled$: getCurrentRangeDisable$(accessor, {
			workbookTypes: [WorkbookEditablePermission],
			worksheetTypes: [WorksheetEditPermission, WorksheetSetCellValuePermission],
			rangeTypes: [RangeProtectionPermissionEditPoint]
		}),`,
    ],
    // The name of a sheet is written by a double click as slow as one may be elsewhere on a computer (500 ms, the usual setting of
    // systems, from memory); Escape gives the writing up, and blanks within a name that is pasted stay.
    ['"DoubleClickDelay", 300', '"DoubleClickDelay", 500'],
    [
      `				e.stopPropagation();
				if (e.key === "Enter") {
					input.blur();`,
      `				e.stopPropagation();
				if (e.key === "Escape") input.innerText = former;
				if (e.key === "Enter" || e.key === "Escape") {
					input.blur();`,
    ],
    [
      'const input = this._slideTabItem.querySelector("span");\n\t\t\tconst pasteAction',
      'const input = this._slideTabItem.querySelector("span");\n\t\t\tconst former = input?.innerText;\n\t\t\tconst pasteAction',
    ],
    [
      'const savedText = text.replace(/\\s/g, "");\n\t\t\t\t\tdocument.execCommand',
      'const savedText = text.replace(/\\s+/g, " ").trim();\n\t\t\t\t\tdocument.execCommand',
    ],
    // The handle that fills is larger where it is a finger that has to find it.
    ['autofillSize: 6,', 'autofillSize: globalThis.matchMedia?.("(pointer: coarse)").matches ? 12 : 6,'],
    // A cell that is led to from below or from the right comes to stand below the rows and beside the columns that stay. The grid
    // goes back by as many rows as stay, as if all were equally tall, so that the cell came to stand under tall ones.
    [
      `			startSheetViewColumn = column;
			const hiddenColumns = skeleton.getHiddenColumnsInRange({
				startColumn: startSheetViewColumn - freezedColCount,
				endColumn: startSheetViewColumn
			});
			startSheetViewColumn = startSheetViewColumn - hiddenColumns.length;`,
      `			const staying = freezedColCount > 0 ? skeleton.colStartX(scrollableStartCol) - skeleton.colStartX(scrollableStartCol - freezedColCount) : 0;
			const at = skeleton.getOffsetRelativeToRowCol(Math.max(0, skeleton.colStartX(column) - staying), 0);
			startSheetViewColumn = at.column + freezedColCount;
			offsetX = at.columnOffset;`,
    ],
    [
      `			startSheetViewRow = row;
			const hiddenRows = skeleton.getHiddenRowsInRange({
				startRow: startSheetViewRow - freezedRowCount,
				endRow: startSheetViewRow
			});
			startSheetViewRow = startSheetViewRow - hiddenRows.length;`,
      `			const staying = freezedRowCount > 0 ? skeleton.rowStartY(scrollableStartRow) - skeleton.rowStartY(scrollableStartRow - freezedRowCount) : 0;
			const at = skeleton.getOffsetRelativeToRowCol(0, Math.max(0, skeleton.rowStartY(row) - staying));
			startSheetViewRow = at.row + freezedRowCount;
			offsetY = at.rowOffset;`,
    ],
    // The name of a sheet that is carried along stays among its neighbours, where its looks have it float. The grid puts it into
    // the page's body meanwhile: whatever then brought other sheets found it gone, and all around the cells went with it.
    ['\t\tdocument.body.appendChild(this._slideTabItem);\n', ''],
    [
      `			this._placeholder.after(this._slideTabItem);
			primeval.removeChild(this._placeholder);`,
      '\t\t\tthis._placeholder.remove();',
    ],
    [
      '\t\t\tconst primeval = this._slideTabBar.primeval();\n\t\t\tthis._slideTabItem.style',
      '\t\t\tthis._slideTabItem.style',
    ],
    // Where the press that begins to write a name ends, nothing waits any more for it to become a long one: it did, where the name
    // was written within half a second.
    [
      'if ((_this$_activeTabItem8 = this._activeTabItem) === null',
      'clearTimeout(this._longPressTimer);\n\t\t\tif ((_this$_activeTabItem8 = this._activeTabItem) === null',
    ],
    // Other sheets, or another workbook, while a name is carried: it is laid down where it was.
    [
      '\t_initConfig() {\n',
      `	_layDown() {
		clearTimeout(this._longPressTimer);
		if (this._autoScrollTime === null) return;
		this._closeAutoScroll();
		this._activeTabItem?.disableFixed();
		this.updateItems();
	}
	_initConfig() {
		this._layDown();
`,
    ],
    [
      '\tdestroy() {\n\t\tthis.removeListener();\n\t\tthis._downActionX',
      '\tdestroy() {\n\t\tthis._layDown();\n\t\tthis.removeListener();\n\t\tthis._downActionX',
    ],
    // Below the cells the sum comes first, and a narrow page has all figures, two to a column, which can be drawn along. The grid
    // has one there, the largest number.
    [
      'const showList = useMemo(() => isSingle && firstItem ? [firstItem] : filteredStatistics, [',
      'const byUse = ({ name }) => ["SUM", "AVERAGE", "MAX", "MIN", "COUNTA", "COUNT"].indexOf(name);\n\t\tconst showList = useMemo(() => [...filteredStatistics].sort((a, b) => byUse(a) - byUse(b)), [',
    ],
    [
      'if (showList.length > rowCountThreshold) return',
      'if (showList.length > (isSingle ? 1 : rowCountThreshold)) return',
    ],
    // Lines around cells: those that go across a cell, and those made of dots and dashes in turn, no file of ours keeps. The
    // others have names.
    [
      'const componentManager = useDependency(ComponentManager);\n\tconst borderStyleManagerService',
      'const words = useDependency(LocaleService);\n\tconst componentManager = useDependency(ComponentManager);\n\tconst borderStyleManagerService',
    ],
    [
      'children: BORDER_LINE_CHILDREN.map((item) => /* @__PURE__ */ jsx("a", {',
      'children: BORDER_LINE_CHILDREN.slice(0, 10).map((item) => /* @__PURE__ */ jsx("a", { role: "button", tabIndex: 0, title: words.t(item.label), "aria-label": words.t(item.label), onKeyDown: (e) => { if (e.key === "Enter" || e.key === " ") e.currentTarget.click(); },',
    ],
    [
      'children: BORDER_SIZE_CHILDREN.map(',
      'children: BORDER_SIZE_CHILDREN.filter(({ value }) => ![BorderStyleTypes.DASH_DOT, BorderStyleTypes.DASH_DOT_DOT, BorderStyleTypes.MEDIUM_DASHED, BorderStyleTypes.MEDIUM_DASH_DOT, BorderStyleTypes.MEDIUM_DASH_DOT_DOT].includes(value)).map(',
    ],
  ],
  // Bars in cells, signs beside values and days that move on, which no file of ours keeps: where there is one already it can
  // still be looked at.
  'sheets-conditional-formatting-ui': [
    [
      `	const [ruleType, setRuleType] = useState(() => {
		var _props$rule3;`,
      `	const offered = options.filter(({ value }) => !["3", "6"].includes(value));
	const [ruleType, setRuleType] = useState(() => {
		var _props$rule3;`,
    ],
    [
      `			value: ruleType,
			options,
			onChange: (e) => setRuleType(e)`,
      `			value: ruleType,
			options: ["3", "6"].includes(ruleType) ? options : offered,
			onChange: (e) => setRuleType(e)`,
    ],
    [
      `		{
			value: CFSubRuleType.timePeriod,
			label: localeService.t("sheets-conditional-formatting-ui.subRuleType.timePeriod")
		},`,
      `		...rule?.subType === CFSubRuleType.timePeriod ? [{
			value: CFSubRuleType.timePeriod,
			label: localeService.t("sheets-conditional-formatting-ui.subRuleType.timePeriod")
		}] : [],`,
    ],
    [
      `	{
		label: {
			name: "sheets-conditional-formatting-ui.ruleType.dataBar",
			selectable: false
		},
		value: 7
	},
	{
		label: {
			name: "sheets-conditional-formatting-ui.ruleType.iconSet",
			selectable: false
		},
		value: 8
	},
`,
      '',
    ],
  ],
  ui: [
    // A key that shows the grid's own list of keys, some of which do other things here: ours are in the help.
    ['this.disposeWithMe(shortcutService.registerShortcut(ToggleShortcutPanelShortcut));', ''],
    // Where the pointer goes from a line of a menu, or from what that has opened: a finger that is lifted goes to the window, in
    // which nothing can be looked for.
    [
      'if (nextTarget && ((_submenuElementRef$cu = submenuElementRef.current)',
      'if (waitsForFinger(nextTarget)) return;\n\t\t\t\tif (nextTarget instanceof Node && ((_submenuElementRef$cu = submenuElementRef.current)',
    ],
    [
      'if (nextTarget && ((_menuItemElementRef$c = menuItemElementRef.current)',
      'if (waitsForFinger(nextTarget)) return;\n\t\t\t\tif (nextTarget instanceof Node && ((_menuItemElementRef$c = menuItemElementRef.current)',
    ],
    // What a line has opened stays there for the finger's next tap, and goes when that is elsewhere. The grid takes a finger that is
    // lifted for a pointer that has gone away, and closed it half a second later.
    [
      'useEffect(() => () => clearSubmenuCloseTimer(), [clearSubmenuCloseTimer]);',
      `useEffect(() => () => clearSubmenuCloseTimer(), [clearSubmenuCloseTimer]);
	const waitsForFinger = (to) => {
		if (to instanceof Node || !matchMedia("(pointer: coarse)").matches) return false;
		const press = ({ target }) => {
			if (menuItemElementRef.current?.contains(target) || submenuElementRef.current?.contains(target)) return;
			removeEventListener("pointerdown", press, true);
			setSubmenuVisible(false);
		};
		addEventListener("pointerdown", press, true);
		return true;
	};`,
    ],
    // A line of a menu that is clicked on once it has opened more, as each line is by a finger, hid that again for good.
    [
      `			if (hasSubmenu && !disabled) {
				setSubmenuPositionReady(false);
				setSubmenuVisible(true);`,
      `			if (hasSubmenu && !disabled) {
				setSubmenuVisible(true);`,
    ],
    [
      `					setSubmenuPositionReady(false);
					setSubmenuVisible(true);
					return;`,
      `					setSubmenuVisible(true);
					return;`,
    ],
  ],
  'sheets-note-ui': [
    // The menu of a cell that has a note offers to write it on.
    [
      'hidden$: combineLatest([getMenuHiddenObservable(accessor, UniverInstanceType.UNIVER_SHEET), getHasNote$(accessor)]).pipe(map(([hidden, hasNote]) => hidden || hasNote)),',
      'hidden$: getMenuHiddenObservable(accessor, UniverInstanceType.UNIVER_SHEET),',
    ],
    // *Note* opens the note of the chosen cell to be written, also where it is shown already to be read: nothing would follow.
    [
      'if (this._activePopup && row === this._activePopup.row',
      'if (!location.trigger && this._activePopup && row === this._activePopup.row',
    ],
  ],
  'sheets-data-validation-ui': [
    // Tick boxes and lists for several words, which no file keeps.
    [
      'const validators = validatorService.getValidatorsByScope(DataValidatorRegistryScope.SHEET);',
      'const validators = validatorService.getValidatorsByScope(DataValidatorRegistryScope.SHEET).filter(({ id }) => id === localRule.type || !["checkbox", "listMultiple"].includes(id));',
    ],
    // Nor does one keep how a list is drawn, or a clock beside a day.
    ['extraComponent: validator.optionsInput', 'extraComponent: void 0'],
  ],
  'sheets-data-validation': [
    // What waits to be checked until the page has time may be of a sheet that has gone meanwhile.
    [
      'async validatorRanges(unitId, subUnitId, ranges) {\n\t\tif (!ranges.length)',
      'async validatorRanges(unitId, subUnitId, ranges) {\n\t\tif (!ranges.length || !this._univerInstanceService.getUnit(unitId, UniverInstanceType.UNIVER_SHEET)?.getSheetBySheetId(subUnitId))',
    ],
    // A new rule begins as one that refuses nothing, and its list looks like those of our sheets.
    [
      `		type: DataValidationType.DECIMAL,
		operator: DataValidationOperator.EQUAL,
		formula1: "100",
		ranges: currentRanges`,
      `		type: DataValidationType.ANY,
		renderMode: DataValidationRenderMode.ARROW,
		ranges: currentRanges`,
    ],
    // Cells that have a rule keep it where others are chosen with them: it would go without a word.
    [
      'const currentRanges = accessor.get(SheetsSelectionsService).getCurrentSelections().map((s) => s.range);',
      `const chosen = accessor.get(SheetsSelectionsService).getCurrentSelections().map((s) => s.range);
	const target = getSheetCommandTarget(accessor.get(IUniverInstanceService));
	const ruled = target ? accessor.get(SheetDataValidationModel).getRules(target.unitId, target.subUnitId).flatMap(({ ranges }) => ranges) : [];
	const free = Rectangle.subtractMulti(chosen, ruled);
	const currentRanges = free.length > 0 ? free : chosen;`,
    ],
  ],
};

/** The grid's file as it is built in. Throws where it no longer reads as it did when it was mended. */
function mended(source, name) {
  return MENDS[name].reduce((text, [stands, by]) => {
    const found = text.split(stands).length - 1;
    if (found !== 1)
      throw new Error(
        `The grid is not as it was: "${stands}" stands there ${found} times. See mended-grid-loader.cjs.`,
      );
    return text.replace(stands, () => by);
  }, source);
}

/** For webpack. */
module.exports = function (source) {
  return mended(source, PACKAGE.exec(this.resourcePath)[1]);
};
module.exports.mended = mended;
module.exports.MENDED = Object.keys(MENDS);
module.exports.mendedGrid = { test: (file) => PACKAGE.exec(file)?.[1] in MENDS, loader: __filename };
