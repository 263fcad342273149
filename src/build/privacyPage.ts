import { type Beside, page } from './page';

const KEPT: Readonly<Record<Beside, readonly string[]>> = {
  excel: [
    'Formulas and sheets stand in your workbook, wherever you keep it.',
    'The browser keeps a few settings of the pane, such as whether its first hint was shown. Clearing the browser’s data for this address takes them away.',
  ],
  workbench: [
    'The workbook is kept by this browser, on this computer, until you clear the browser’s data for this address; what Start over and Open .xlsx took the place of can be taken back once.',
    'The browser keeps a few settings, such as whether the page is dark and its first hint was shown. Clearing its data takes them away as well.',
    'Files that you save go where your browser saves files.',
  ],
};

const FETCHED: Readonly<Record<Beside, string>> = { excel: 'the add-in’s', workbench: 'the page’s' };

const OTHERS: Readonly<Record<Beside, string>> = {
  excel: `<p>Inside Excel, the page uses Office.js, a library of Microsoft’s, and runs in a program of Microsoft’s. What those send or keep is told in Microsoft’s own privacy statement, not here. A studio can serve its own copy of the library, so that the page asks no other address for anything.</p>
`,
  workbench: `<p>The page asks no other address for anything. What the browser itself sends or keeps is told by its maker.</p>
`,
};

export const privacyPage = (beside: Beside): string =>
  page(
    'privacy.html',
    beside,
    `<p>Sweeptable calculates where you type. Nothing that you write into a cell leaves your computer through it.</p>
<h2>What leaves the page</h2>
<p>No data. Sweeptable has no server of its own, sends no request with anything of yours in it, counts nobody, and asks for no name and no account. The browser fetches ${FETCHED[beside]} own files from the address where your studio keeps them; like every web server, that one can see which computer asks.</p>
<h2>What is kept</h2>
<ul>
${KEPT[beside].map((kept) => `<li>${kept}</li>\n`).join('')}</ul>
<h2>What is not ours</h2>
${OTHERS[beside]}<p>Sweeptable is built with parts that others made and let everybody use: <a href="licences.txt">their names and licences</a>.</p>
<h2>Questions</h2>
<p>Whoever looks after Sweeptable in your studio answers them: see <a href="support.html">Support</a>.</p>
`,
  );
