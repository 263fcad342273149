import { type Beside, CARE, caution, page, text } from './page';

const NOBODY_NAMED: Readonly<Record<Beside, string>> = {
  excel:
    'Ask whoever installed Sweeptable in your studio: the administrator of your Microsoft 365, or the colleague who looks after the computers.',
  workbench:
    'Ask whoever set Sweeptable up in your studio: the colleague who looks after the computers, or who gave you the address of this page.',
};

/** A contact as it was given to the build; an address becomes a link. */
function contactText(contact: string): string {
  const shown = text(contact);
  if (/^[^\s@:]+@[^\s@:]+\.[^\s@:]+$/.test(contact)) return `<a href="mailto:${shown}">${shown}</a>`;
  return /^https:\/\/\S+$/.test(contact) ? `<a href="${shown}">${shown}</a>` : shown;
}

const ERRORS = '#VALUE!, #NUM! or #N/A';
const READ = 'A value could not be read, is impossible, or has no answer.';
const CELLS = '<a href="help.html#about-cells">How cells are read</a> lists what is understood.';

/** What somebody meets, and what to do: the second is markup. */
const FIRST: Readonly<Record<Beside, readonly (readonly [string, string])[]>> = {
  excel: [
    [
      'A cell shows #NAME?',
      'Open the pane with the Sweeptable button on the Home tab, and press Recalculate. If the formula has <code>_xldudf_</code> in it, Excel has lost the name of the function: press Look for lost names at the foot of the pane’s Sheets.',
    ],
    [
      'A cell shows #BUSY!',
      'Excel waits for the add-in. Open the pane and wait a moment. If it stays, save the workbook, close it and open it again.',
    ],
    [
      `A cell shows ${ERRORS}`,
      `${READ} Select the cell and point at the sign beside it: the sentence says what to write instead. ${CELLS}`,
    ],
    [
      'A new function is missing',
      'Excel keeps the list of functions for about a day. Close Excel and open it again tomorrow, or ask for the add-in to be installed anew.',
    ],
    [
      'The pane says that Excel’s part did not load',
      'The network keeps Microsoft’s library away. The administrator can serve a copy of the studio’s own.',
    ],
  ],
  workbench: [
    [
      'A cell shows #NAME?',
      'No function or name is spelled like that. Point at the cell: the tip says which one may be meant. The pane lists all of ours, under Functions.',
    ],
    [`A cell shows ${ERRORS}`, `${READ} Point at the cell: the tip says what to write instead. ${CELLS}`],
    [
      'The workbook is not there',
      'It is kept by one browser on one computer, for one address: look where you typed it, in a window that is not private. Save as .xlsx makes a file that can be carried along, and Open .xlsx reads it.',
    ],
    [
      'Answers do not follow what is typed',
      'Load the page anew: what you typed is stored. Where the page says that it cannot be stored, press Save as .xlsx first.',
    ],
  ],
};
const TELL: Readonly<Record<Beside, string>> = {
  excel: 'the version of Excel (File, Account)',
  workbench: 'the name and version of the browser',
};

/** @param contact - who helps in the studio that this build is for. */
export const supportPage = (beside: Beside, contact?: string): string =>
  page(
    'support.html',
    beside,
    `<h2 id="contact">Who helps</h2>
<p>${contact ? `In your studio: <strong>${contactText(contact)}</strong>` : text(NOBODY_NAMED[beside])}</p>
<h2 id="first">What to try first</h2>
<dl>
${FIRST[beside].map(([met, todo]) => `<dt>${text(met)}</dt>\n<dd>${todo}</dd>\n`).join('')}</dl>
<h2 id="tell">What to tell</h2>
<p>The formula as it stands in the cell, what it shows, what you expected, and ${TELL[beside]}. A picture of the sheet helps; take out the client’s names first.</p>
<h2 id="care">Take care</h2>
${caution(`${CARE} Figures from a sheet help you plan; meter before you shoot. Nobody who helps with Sweeptable can tell you whether an installation is safe.`)}`,
  );
