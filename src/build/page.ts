import { AS_CHOSEN, AS_CHOSEN_SUM } from './asChosen';

/** A text as it stands in markup. */
export const text = (plain: string): string =>
  plain.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** What a set of pages stands beside: it speaks of that spreadsheet and of no other. */
export type Beside = 'excel' | 'workbench';

/** The pages, by their files. */
const PAGES = { 'help.html': 'Help', 'support.html': 'Support', 'privacy.html': 'Privacy' } as const;
export type PageName = keyof typeof PAGES;

/** What can hurt somebody, on every page that tells how to work. */
export const CARE =
  'Flash equipment runs on mains current and keeps a dangerous charge after it is unplugged; lamps and tubes burn; repeated flashes can harm people who are sensitive to them. The maker’s instructions and local codes come first, and wiring is work for a licensed electrician.';

/** A text that stands apart, by its label as well as by its colour. */
export const caution = (content: string): string =>
  `<div class="caution">\n<p><strong>Take care.</strong> ${text(content)}</p>\n</div>\n`;

/** The colours are the pane's. */
const STYLE = `
:root { color-scheme: light dark; --paper: light-dark(#fbf8f1, #1b242c); --card: light-dark(#ffffff, #232e38); --ink: light-dark(#22303c, #ece7dd); --quiet: light-dark(#4a5a68, #b3bdc5); --line: light-dark(#e4e1d8, #3b4853); --glaze: light-dark(#084b4f, #82d1ca); --wash: light-dark(#e0efee, #21393d); --clay: light-dark(#7d2410, #f4b498); --clay-wash: light-dark(#fbe3dc, #43291f); }
[data-theme='light'] { color-scheme: light; }
[data-theme='dark'] { color-scheme: dark; }
* { box-sizing: border-box; }
html { background: var(--paper); scroll-padding-top: 16px; }
body { max-width: 48rem; margin: 0 auto; padding: 16px; color: var(--ink); font: 16px/24px 'Segoe UI', system-ui, sans-serif; overflow-wrap: break-word; }
h1 { font-size: 28px; line-height: 36px; margin: 16px 0; }
h2 { font-size: 22px; line-height: 32px; margin: 48px 0 8px; padding-top: 16px; border-top: 1px solid var(--line); }
h1 + h2 { margin-top: 0; padding-top: 8px; border: 0; }
h3 { font-size: 18px; line-height: 24px; margin: 0 0 4px; }
h4 { font-size: 16px; line-height: 24px; margin: 16px 0 4px; color: var(--quiet); }
p, ul, dl, dd { margin: 0 0 8px; }
dt { font-weight: 600; }
dd { margin-left: 0; }
a { color: var(--glaze); }
a:focus-visible { outline: 2px solid; outline-offset: 2px; }
code { font: 14px/24px Consolas, 'Cascadia Mono', Menlo, 'DejaVu Sans Mono', monospace; overflow-wrap: anywhere; }
table { width: 100%; margin: 8px 0 16px; border-collapse: collapse; }
th, td { padding: 4px 8px 4px 0; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top; }
nav ul { display: flex; flex-wrap: wrap; gap: 0 16px; padding: 0; list-style: none; }
nav a { display: inline-block; padding: 4px 0; }
.quiet { color: var(--quiet); }
.caution { margin: 12px 0; padding: 8px 12px; border-left: 4px solid var(--clay); background: var(--clay-wash); }
.caution p { margin: 0; }
.caution strong { color: var(--clay); }
@page { margin: 16mm 14mm; }
@media print {
  :root { color-scheme: light; --paper: #ffffff; }
  body { max-width: none; padding: 0; font-size: 9.5pt; line-height: 13pt; }
  h4 { margin-top: 8pt; font-size: inherit; line-height: inherit; }
  code { font-size: 8.5pt; line-height: 13pt; }
  a { color: inherit; text-decoration: none; }
  h1, h2, h3, h4 { break-after: avoid; }
  tr, dt, dd, li, p, .caution { break-inside: avoid; }
  dt { break-after: avoid; }
  .screen { display: none; }
}`;

/** All that runs on a page beside the workbench: it is light or dark as the workbench was set against the system. */
const runs: Readonly<Record<Beside, string>> = { excel: '', workbench: `${AS_CHOSEN}\n` };
const mayRun: Readonly<Record<Beside, string>> = {
  excel: '',
  workbench: `script-src ${AS_CHOSEN_SUM}; `,
};

const links = (name: PageName): string =>
  (Object.entries(PAGES) as [PageName, string][])
    .map(([file, label]) =>
      file === name
        ? `<li><a href="${file}" aria-current="page">${label}</a></li>`
        : `<li><a href="${file}">${label}</a></li>`,
    )
    .join('\n');

/** A page of our own. It loads nothing, and may not. */
export const page = (name: PageName, beside: Beside, body: string, style = ''): string => `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8" />
<meta name="viewport" content="width=device-width, initial-scale=1" />
<meta name="color-scheme" content="light dark" />
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; ${mayRun[beside]}style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'" />
<title>Sweeptable ${PAGES[name].toLowerCase()}</title>
${runs[beside]}<style>${STYLE}${style}
</style>
</head>
<body>
<nav class="screen" aria-label="Pages">
<ul>
${links(name)}
</ul>
</nav>
<main>
<h1>Sweeptable ${PAGES[name].toLowerCase()}</h1>
${body}</main>
</body>
</html>
`;
