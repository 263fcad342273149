import { CATALOGUE, NAMESPACE } from '../catalogue';
import { type AnyRow, type Arg, type Example, FAMILIES, type Family } from '../catalogue/types';
import { argumentHelp, exampleFormula, functionName, resultText } from '../catalogue/words';

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const text = (plain: string): string => plain.replace(/[&<>"]/g, (sign) => SIGNS[sign] as string);

const paragraph = (label: string, content: string | undefined): string =>
  content === undefined ? '' : `<p><b>${label}:</b> ${text(content)}</p>\n`;

const argument = (arg: Arg): string =>
  `<dt>${text(arg.name)}${arg.optional ? ' (may be left out)' : ''}</dt>\n<dd>${text(argumentHelp(arg))}</dd>\n`;

const example = (row: AnyRow, shown: Example): string =>
  `<p><b>Example:</b> <code>${text(exampleFormula(row, shown))}</code> gives ${text([shown.gives].flat().join('; '))} (${text(resultText(row))})</p>\n`;

const section = (row: AnyRow): string => `<section id="${row.id.toLowerCase()}">
<h3>${functionName(row)}</h3>
<p>${text(row.gives)}</p>
<dl>
${row.args.map(argument).join('')}</dl>
${paragraph('Formula', row.formula)}${row.examples.map((shown) => example(row, shown)).join('')}${paragraph('Notes', row.notes)}${paragraph('Caution', row.caution)}</section>
`;

const family = ([id, heading]: [Family, string]): string => {
  const rows = CATALOGUE.filter((row) => row.family === id);
  return rows.length === 0 ? '' : `<h2>${text(heading)}</h2>\n${rows.map(section).join('')}`;
};

/** The page that Excel opens for a function; each has its place, named by its id in small letters. */
export const helpPage = (): string => `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8" />
<meta name="viewport" content="width=device-width, initial-scale=1" />
<meta name="color-scheme" content="light dark" />
<title>Sweeptable help</title>
<style>
body { max-width: 44rem; margin: 0 auto; padding: 16px; font: 16px/24px 'Segoe UI', system-ui, sans-serif; overflow-wrap: break-word; }
h2 { margin-top: 48px; }
dt { font-weight: 600; }
dd { margin: 0 0 8px; }
code { font-family: Consolas, Menlo, monospace; }
:target { outline: 2px solid; outline-offset: 8px; }
</style>
</head>
<body>
<h1>Sweeptable help</h1>
<p>Type <code>=${NAMESPACE}.</code> in a cell and pick a function. Every value may be a cell or a range; a range in gives a range out.</p>
<p>Flash equipment runs on mains current and keeps a dangerous charge after it is unplugged; lamps and tubes burn; repeated flashes can harm people who are sensitive to them. The maker’s instructions and local codes come first, and wiring is work for a licensed electrician.</p>
${(Object.entries(FAMILIES) as [Family, string][]).map(family).join('')}</body>
</html>
`;
