/** The file that this is about: what the grid of @univerjs/sheets-ui 0.25.1 does where it has no words of its own for others. */
const GRID = /@univerjs[\\/]sheets-ui[\\/]lib[\\/]es[\\/]index\.js$/;

/** What stands there, once, and what is put in its place. */
const MENDS = [
  // Shift+Tab and Shift+Enter go on to the selection before: of the first one that is the last, not one before the first,
  // which is none, so that nothing would be selected any more.
  [
    'const nextSelection = currentSelectionIndex + delta !== selections.length ? selections[currentSelectionIndex + delta] : selections[0];',
    'const nextSelection = selections.at((currentSelectionIndex + delta) % selections.length);',
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
];

/** The grid's file as it is built in. Throws where it no longer reads as it did when it was mended. */
function mended(source) {
  return MENDS.reduce((text, [stands, by]) => {
    const found = text.split(stands).length - 1;
    if (found !== 1)
      throw new Error(
        `The grid is not as it was: "${stands}" stands there ${found} times. See mended-grid-loader.cjs.`,
      );
    return text.replace(stands, () => by);
  }, source);
}

/** For webpack. */
module.exports = mended;
module.exports.mended = mended;
module.exports.mendedGrid = { test: GRID, loader: __filename };
