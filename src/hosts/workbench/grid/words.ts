/** Words of the grid by their place in its tree. */
interface Words {
  readonly [key: string]: string | Words | readonly unknown[];
}

/** Written with a capital wherever they stand. */
const NAMES: ReadonlySet<string> = new Set(['Excel', 'Univer', 'Ctrl', 'Unicode', 'True', 'False']);
const CAPITAL = /^\p{Lu}[\p{Ll}']+$/u;

/** A title with a capital on each word, as a sentence has it. */
export function inSentenceCase(text: string): string {
  let begins = true;
  return text.replaceAll(/[\p{L}\p{N}']+|[.?!:]/gu, (piece) => {
    const lower = !begins && CAPITAL.test(piece) && !NAMES.has(piece);
    begins = /^[.?!:]$/.test(piece);
    return lower ? piece.charAt(0).toLowerCase() + piece.slice(1) : piece;
  });
}

/** Names of functions, of typefaces, of countries and their money: they are not titles. */
const AS_THEY_ARE = /function|font|currency|locale|country/i;

const sentences = (words: Words): Words =>
  Object.fromEntries(
    Object.entries(words).map(([key, value]) => {
      if (AS_THEY_ARE.test(key)) return [key, value];
      if (typeof value === 'string') return [key, inSentenceCase(value)];
      return [key, Array.isArray(value) ? value : sentences(value as Words)];
    }),
  );

/** What we say otherwise. */
const OURS: Words = {
  'sheets-ui': {
    toolbar: {
      toggleGridlines: 'Lines between cells',
      textColor: { main: 'Ink', right: 'Choose the ink' },
      fillColor: { main: 'Ground', right: 'Choose the ground' },
      resetColor: 'As the sheet has it',
      border: { main: 'Edges', right: 'Choose the edges' },
      horizontalAlignMode: { main: 'Side on which words stand', right: 'Choose the side' },
      textWrapMode: { main: 'Words that are too long', right: 'Choose what becomes of them' },
    },
    align: { left: 'Left', center: 'Middle', right: 'Right' },
    textWrap: { overflow: 'Run on into free cells', wrap: 'Go on in a new line', clip: 'Are cut off' },
    borderLine: {
      borderTop: 'Above',
      borderBottom: 'Below',
      borderLeft: 'On the left',
      borderRight: 'On the right',
      borderNone: 'None',
      borderAll: 'Around each cell',
      borderOutside: 'Around all',
      borderInside: 'Between them',
      borderHorizontal: 'Between the rows',
      borderVertical: 'Between the columns',
      borderColor: 'Ink of the edges',
      borderSize: 'Line of the edges',
    },
    rightClick: {
      copySpecial: 'Copy as',
      pasteSpecial: 'Paste only',
      pasteValue: 'Values',
      pasteFormat: 'Looks',
      pasteColWidth: 'Widths of columns',
      pasteBesidesBorder: 'All but edges',
      insertColsLeftSuffix: 'columns left',
      insertColsRightSuffix: 'columns right',
      showHideRow: 'Show hidden rows',
      showHideColumn: 'Show hidden columns',
      clearFormat: 'Clear looks',
      fitContent: 'As large as needed',
      insertRowsAfterSuffix: 'rows below',
      hideSelectedRow: 'Hide these rows',
      hideSelectedColumn: 'Hide these columns',
      deleteSelectedRow: 'Delete these rows',
      deleteSelectedColumn: 'Delete these columns',
      freeze: 'Keep in view',
      freezeCell: 'All above and left of here ({0} rows, {1} columns)',
      freezeCol: 'Columns up to {0}',
      freezeRow: 'Rows up to {0}',
      freezeFirstCol: 'The first column',
      freezeFirstRow: 'The first row',
      cancelFreeze: 'Nothing any more',
    },
    sheetConfig: {
      tipNameRepeat: 'Another sheet is called so. Choose another name.',
      redoDelete: 'Ctrl+Z brings it back.',
      copy: 'Copy this sheet',
      changeColor: 'Colour of the tab',
      unhide: 'Show hidden sheets',
      noHide: 'This is the last sheet in view: it stays.',
      deleteSheetContent: 'Delete this sheet? Ctrl+Z brings it back.',
    },
    definedName: {
      managerTitle: 'Names of cells',
      managerDescription: 'A name stands for its cells, or for a formula, in any other formula.',
      addButton: 'Give a name',
      featureTitle: 'Names of cells',
      ratioRange: 'Cells',
    },
    'data-validation': { list: { dropdown: 'Choose one' }, listMultiple: { dropdown: 'Choose any' } },
    statusbar: { count: 'Numbers', countA: 'Filled cells', clickToCopy: 'Press to copy' },
  },
  'sheets-numfmt-ui': { addDecimal: 'One digit more', subtractDecimal: 'One digit less' },
  'sheets-data-validation-ui': {
    title: 'What may be typed',
    panel: { title: 'What may be typed', addTitle: 'A new rule for what may be typed' },
  },
  'sheets-conditional-formatting-ui': {
    title: 'Looks by value',
    menu: {
      manageConditionalFormatting: 'All such looks of this sheet',
      createConditionalFormatting: 'A new look by value',
      clearRangeRules: 'Take them from these cells',
      clearWorkSheetRules: 'Take them from the whole sheet',
    },
    ruleType: {
      highlightCell: 'A colour for some values',
      dataBar: 'Bars in the cells',
      colorScale: 'A range of colours',
      formula: 'Where a formula says so',
      iconSet: 'Signs beside values',
    },
  },
  'sheets-table-ui': { title: 'Table', selectRange: 'The cells of the table' },
};

function merged(words: Words, more: Words): Words {
  const both: Record<string, Words[string]> = { ...words };
  for (const [key, value] of Object.entries(more)) {
    const old = both[key];
    both[key] =
      typeof value === 'object' && typeof old === 'object' ? merged(old as Words, value as Words) : value;
  }
  return both;
}

/** The grid's own words as the page around it writes: in sentence case, and in our words where we have better ones. */
export const inOurWords = <W extends object>(words: W): W => merged(sentences(words as Words), OURS) as W;
