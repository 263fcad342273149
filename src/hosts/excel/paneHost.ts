import type { Outcome, PaneHost } from '../../pane/host';
import {
  copied,
  copiedCard,
  estimateFrom,
  NO_ESTIMATE,
  noSheet,
  notAFormula,
  NOTHING_TO_COPY,
  UNTOUCHED,
} from '../../pane/sentences';
import { ESTIMATE, hasPrices, nextEstimate } from '../../sheets/nextEstimate';
import type { Template } from '../../sheets/template';
import { jobToLay, templateToLay } from '../../sheets/templateToLay';
import { clientFile } from './clientFile';
import { enterAgain } from './enterAgain';
import { differenceText, laidText } from './laidText';
import { lay, UNDO_EMPTIED, WHEN_READY } from './lay';
import { newJob } from './newJob';
import { putPicture, readSheet } from './pictures';
import { NOT_PUT, putFormula } from './putFormula';
import { readInView } from './readInView';
import { type LinkHost, linkHost } from './links/linkHere';
import { excelRefusal } from './refusals';
import { type RepairHost, repairHost } from './repairHost';
import { lookUp } from './selectedCell';
import type { SheetMark } from './sheetMark';
import { readBlock, writeCells } from './tableCells';
import { takeSheetBack } from './takeSheetBack';
import { told } from './told';
import { copyValues, type NotReady } from './valuesCopy';
import { whileVisible } from './visibility';
import { watchCell } from './watchCell';

/** What the pane may ask of Excel. */
export type ExcelHost = Required<
  Pick<
    PaneHost,
    | 'insertSheet'
    | 'newJob'
    | 'putFormula'
    | 'recalculate'
    | 'copyValues'
    | 'copyCosts'
    | 'newEstimate'
    | 'prepareClientPage'
    | 'watchCell'
    | 'tables'
    | 'sheets'
    | 'pictures'
    | 'help'
  >
> &
  RepairHost &
  LinkHost;

/** The help page lies beside the pane's. */
export const HELP = 'help.html';

/** A sheet that has just been made can be taken back, as long as it stays as it is. */
const andBack = (excel: typeof Excel, done: string, mark: SheetMark | undefined): Outcome =>
  mark === undefined
    ? { done }
    : { done, takeBack: () => told(takeSheetBack(excel, mark), `“${mark.name}” was left in the workbook.`) };

async function insert(excel: typeof Excel, template: Template, filled: boolean): Promise<Outcome> {
  const laid = await lay(excel, template, filled);
  return andBack(excel, laidText(laid, filled), laid.mark);
}

/** Lays a sheet that holds what was made for this workbook. */
async function layMade(excel: typeof Excel, template: Template): Promise<Outcome> {
  const laid = await lay(excel, template, true);
  return andBack(excel, laidText(laid, false), laid.mark);
}

async function anotherEstimate(excel: typeof Excel, template: Template): Promise<Outcome> {
  const from = await excel.run(WHEN_READY, (context) => readInView(context, hasPrices));
  if (!from) return NO_ESTIMATE;
  const laid = await lay(excel, nextEstimate(template, from), true);
  return andBack(excel, `${laidText(laid, false)} ${estimateFrom(from.name)}`, laid.mark);
}

/** What a copy as values costs here, and why it is to be handed on by itself (Microsoft Learn, Office.DisableTrustUX). */
const COPY_COSTS =
  'Excel empties its undo list for it. A workbook with formulas of ours makes Excel ask others whether they trust Sweeptable: hand on the copy alone, in a workbook of its own.';

/** Whether Excel has anything left to calculate it does not tell reliably (OfficeDev/office-js #2883, #3319). */
const MAY_BE_BEHIND =
  'Excel calculates this workbook by hand: what was typed since it last did so is not in these values. If you typed, take the copy back, press F9, and copy again.';

const notReady = ({ cell, shows }: NotReady): Outcome => ({
  refused: `${cell} shows ${shows}, so the values are not all there yet. Nothing was copied. Wait until Excel has calculated, or press Recalculate, then try again.`,
});

async function copyInView(excel: typeof Excel): Promise<Outcome> {
  const copy = await copyValues(excel);
  if (copy === 'empty') return NOTHING_TO_COPY;
  if ('notReady' in copy) return notReady(copy.notReady);
  if ('unlike' in copy)
    return {
      refused: `Excel did not copy every value as it is. ${copy.unlike} Show all rows of the sheet, then try again.`,
    };
  const behind = copy.isByHand ? [MAY_BE_BEHIND] : [];
  if ('card' in copy) {
    const { said, differences, mark } = copy.card;
    const done = [copiedCard(copy.name), ...behind, ...said, ...differenceText(differences), UNDO_EMPTIED];
    return andBack(excel, done.join(' '), mark);
  }
  const done = `${[copied(copy.name), ...behind].join(' ')} Its tables are plain cells now. ${UNDO_EMPTIED} Look the sheet over before you hand it on.`;
  return andBack(excel, done, copy.mark);
}

/** Entered again, a formula is as it was. */
const ENTERED = 'No formula was changed.';

/** Excel, as the pane sees it. */
export const excelHost = (excel: typeof Excel): ExcelHost => ({
  insertSheet: async (id, filled) => {
    const template = await templateToLay(id);
    if (template && 'refused' in template) return template;
    if (!template) return noSheet(id);
    return told(insert(excel, template, filled), UNTOUCHED);
  },
  newJob: async () => {
    const templates = await jobToLay();
    return 'refused' in templates ? templates : told(newJob(excel, templates), UNTOUCHED);
  },
  putFormula: async (formula) => notAFormula(formula) ?? told(putFormula(excel, formula), NOT_PUT),
  recalculate: () => told(enterAgain(excel), ENTERED),
  copyValues: () => told(copyInView(excel), UNTOUCHED),
  copyCosts: COPY_COSTS,
  newEstimate: async () => {
    const template = await templateToLay(ESTIMATE);
    if (template && 'refused' in template) return template;
    if (!template) return noSheet(ESTIMATE);
    return told(anotherEstimate(excel, template), UNTOUCHED);
  },
  prepareClientPage: () => told(clientFile(excel), UNTOUCHED),
  watchCell: whileVisible(watchCell(excel)),
  ...linkHost(excel),
  tables: {
    readBlock: () =>
      readBlock(excel).catch((error: unknown) => ({ refused: excelRefusal(error, UNTOUCHED) })),
    look: (references) => lookUp(excel, references),
    writeCells: (block, writes) => told(writeCells(excel, block, writes, told), UNTOUCHED),
    laySheet: (template) => told(insert(excel, template, true), UNTOUCHED),
  },
  sheets: {
    read: (isWanted) =>
      excel
        .run(WHEN_READY, (context) => readInView(context, isWanted))
        .catch((error: unknown) => ({ refused: excelRefusal(error, UNTOUCHED) })),
    lay: (template) => told(layMade(excel, template), UNTOUCHED),
  },
  pictures: {
    readSheet: () =>
      readSheet(excel).catch((error: unknown) => ({ refused: excelRefusal(error, UNTOUCHED) })),
    putPicture: (picture) => told(putPicture(excel, picture, told), 'A picture may be on the sheet: look.'),
  },
  ...repairHost(excel),
  help: HELP,
});
