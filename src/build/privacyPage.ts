import { page } from './page';

export const privacyPage = (): string =>
  page(
    'privacy.html',
    `<p>Sweeptable calculates where you type. Nothing that you write into a cell leaves your computer through it.</p>
<h2>What leaves the page</h2>
<p>No data. Sweeptable has no server of its own, sends no request with anything of yours in it, counts nobody, and asks for no name and no account. The browser fetches the add-in’s own files from the address where your studio keeps them; like every web server, that one can see which computer asks.</p>
<h2>What is kept</h2>
<ul>
<li>Formulas and sheets stand in your workbook, wherever you keep it.</li>
<li>The browser keeps a few settings of the pane, such as whether its first hint was shown. Clearing the browser’s data for this address takes them away.</li>
<li>The workbench, which runs without Excel, keeps its sheets in the browser of the same computer, until you clear them.</li>
</ul>
<h2>What is not ours</h2>
<p>Inside Excel, the page uses Office.js, a library of Microsoft’s, and runs in a program of Microsoft’s. What those send or keep is told in Microsoft’s own privacy statement, not here. A studio can serve its own copy of the library, so that the page asks no other address for anything.</p>
<p>Sweeptable is built with parts that others made and let everybody use: <a href="licences.txt">their names and licences</a>.</p>
<h2>Questions</h2>
<p>Whoever looks after the add-in in your studio answers them: see <a href="support.html">Support</a>.</p>
`,
  );
