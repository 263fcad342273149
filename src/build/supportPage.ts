import { CARE, caution, page, text } from './page';

const NOBODY_NAMED =
  'Ask whoever installed Sweeptable in your studio: the administrator of your Microsoft 365, or the colleague who looks after the computers.';

/** A contact as it was given to the build; an address becomes a link. */
function contactText(contact: string): string {
  const shown = text(contact);
  if (/^[^\s@:]+@[^\s@:]+\.[^\s@:]+$/.test(contact)) return `<a href="mailto:${shown}">${shown}</a>`;
  return /^https:\/\/\S+$/.test(contact) ? `<a href="${shown}">${shown}</a>` : shown;
}

/** @param contact - who helps in the studio that this build is for. */
export const supportPage = (contact?: string): string =>
  page(
    'support.html',
    `<h2 id="contact">Who helps</h2>
<p>${contact ? `In your studio: <strong>${contactText(contact)}</strong>` : text(NOBODY_NAMED)}</p>
<h2 id="first">What to try first</h2>
<dl>
<dt>A cell shows #NAME?</dt>
<dd>Open the pane with the Sweeptable button on the Home tab, and press Recalculate. If the formula has <code>_xldudf_</code> in it, Excel has lost the name of the function: press Look for lost names at the foot of the pane’s Sheets.</dd>
<dt>A cell shows #BUSY!</dt>
<dd>Excel waits for the add-in. Open the pane and wait a moment. If it stays, save the workbook, close it and open it again.</dd>
<dt>A cell shows #VALUE!, #NUM! or #N/A</dt>
<dd>A value could not be read, is impossible, or has no answer. Select the cell and point at the sign beside it: the sentence says what to write instead. <a href="help.html#about-cells">How cells are read</a> lists what is understood.</dd>
<dt>A new function is missing</dt>
<dd>Excel keeps the list of functions for about a day. Close Excel and open it again tomorrow, or ask for the add-in to be installed anew.</dd>
<dt>The pane says that Excel’s part did not load</dt>
<dd>The network keeps Microsoft’s library away. The administrator can serve a copy of the studio’s own.</dd>
</dl>
<h2 id="tell">What to tell</h2>
<p>The formula as it stands in the cell, what it shows, what you expected, and the version of Excel (File, Account). A picture of the sheet helps; take out the client’s names first.</p>
<h2 id="care">Take care</h2>
${caution(`${CARE} Figures from a sheet help you plan; meter before you shoot. Nobody who helps with Sweeptable can tell you whether an installation is safe.`)}`,
  );
