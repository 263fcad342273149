import { CATALOGUE, NAMESPACE } from '../catalogue';
import { SOURCES, type SourceKey } from '../catalogue/sources';
import { type AnyRow, type Arg, type Example, FAMILIES, type Family } from '../catalogue/types';
import {
  answerText,
  exampleAnswer,
  exampleFormula,
  fallbackText,
  formsText,
  functionName,
  resultText,
  signature,
  sourceWords,
  unitOf,
} from '../catalogue/words';
import { rangeText } from '../exposure/core/range';
import { plainNumber, unbroken } from '../pane/numberText';
import { general } from './help-general';
import { type Beside, caution, page, text } from './page';

const STYLE = `
#contents h3 { margin-top: 16px; }
section { margin: 0 -8px; padding: 20px 8px; }
section + section { border-top: 1px solid var(--line); }
section:target { background: var(--wash); }
section h3 { color: var(--glaze); }
.gives { font-weight: 600; }
.optional { font-weight: 400; }
.example code { padding: 0 4px; border-radius: 4px; background: var(--wash); }
.top { margin: 16px 0 0; }
.marks { display: grid; grid-template-columns: repeat(auto-fill, minmax(9rem, 1fr)); gap: 0 16px; padding: 0; list-style: none; font-variant-numeric: tabular-nums; }
@media print {
  section { margin: 0; padding: 12pt 0; break-inside: avoid; }
  section:target { background: none; }
  .example code { padding: 0; background: none; }
  .example { break-inside: avoid; }
}`;

const anchor = (row: AnyRow): string => row.id.toLowerCase();

const part = (heading: string, content: string): string => `<h4>${heading}</h4>\n${content}\n`;
const inWords = (heading: string, content: string | undefined): string =>
  content === undefined ? '' : part(heading, `<p>${text(content)}</p>`);

function argument(arg: Arg): string {
  const facts = [
    ['Unit', unitOf(arg)],
    ['Range', rangeText(arg.range)],
    ['Write', unbroken(formsText(arg))],
  ].flatMap(([label, content]) => (content ? [`${label}: ${content}.`] : []));
  const standsIn = arg.fallback === undefined ? '' : fallbackText(arg);
  const optional = arg.optional ? ' <span class="optional">(may be left out)</span>' : '';
  return `<dt>${text(arg.name)}${optional}</dt>
<dd>${text(arg.about)}.<br />
<span class="quiet">${text([...facts, standsIn].join(' ').trim())}</span></dd>
`;
}

const source = (key: SourceKey): string => {
  const [kind, rest] = sourceWords(SOURCES[key]);
  return `<b>${kind}</b>${text(rest)}`;
};

function example(row: AnyRow, shown: Example): string {
  const unit = row.result.unit && ` ${resultText(row)}`;
  const from = shown.source === undefined ? '' : `<br />\n<span class="quiet">${source(shown.source)}</span>`;
  return `<p class="example"><code>${text(exampleFormula(row, shown))}</code> gives <strong>${text(exampleAnswer(shown, plainNumber))}</strong>${text(unit)}${from}</p>`;
}

const section = (row: AnyRow): string => `<section id="${anchor(row)}">
<h3>${row.id}</h3>
<p class="gives">${text(row.gives)}</p>
<p><code>=${NAMESPACE}.${text(signature(row))}</code><br />
${text(answerText(row))}</p>
${row.caution === undefined ? '' : caution(row.caution)}${part('Values', `<dl>\n${row.args.map(argument).join('')}</dl>`)}${inWords('Formula', row.formula)}${part(row.examples.length === 1 ? 'Example' : 'Examples', row.examples.map((shown) => example(row, shown)).join('\n'))}${inWords('Conventions', row.notes)}${part('Where it comes from', `<ul>\n${row.sources.map((key) => `<li>${source(key)}</li>\n`).join('')}</ul>`)}<p class="top screen"><a href="#contents" aria-label="Contents, from ${functionName(row)}">Contents</a></p>
</section>
`;

const families = (Object.entries(FAMILIES) as [Family, string][])
  .map(([id, heading]) => ({ id, heading, rows: CATALOGUE.filter((row) => row.family === id) }))
  .filter(({ rows }) => rows.length > 0);

const list = (links: readonly (readonly [anchor: string, label: string])[]): string =>
  `<ul>\n${links.map(([id, label]) => `<li><a href="#${id}">${text(label)}</a></li>\n`).join('')}</ul>\n`;

const contents = (
  about: ReturnType<typeof general>,
): string => `<nav id="contents" aria-labelledby="contents-heading">
<h2 id="contents-heading">Contents</h2>
${list(about.map(({ id, heading }) => [id, heading]))}${families
  .map(
    ({ id, heading, rows }) =>
      `<h3><a href="#family-${id}">${text(heading)}</a></h3>\n${list(rows.map((row) => [anchor(row), row.id]))}`,
  )
  .join('')}</nav>
`;

const FIRST: Readonly<Record<Beside, string>> = {
  excel: `<p>Type <code>=${NAMESPACE}.</code> in a cell and pick a function. Where Excel offers none, open the pane: it lists them all.</p>`,
  workbench: `<p>Type <code>=${NAMESPACE}.</code> in a cell and pick a function; the beginning of its own name, such as <code>=pops</code>, finds it as well. The pane lists them all, under Functions.</p>`,
};

/** Each function has its place, named by its id in small letters: Excel opens it there. */
export function helpPage(beside: Beside): string {
  const about = general(beside);
  return page(
    'help.html',
    beside,
    `${FIRST[beside]}
${contents(about)}${about.map(({ id, heading, body }) => `<h2 id="${id}">${text(heading)}</h2>\n${body}`).join('')}${families
      .map(
        ({ id, heading, rows }) =>
          `<h2 id="family-${id}">${text(heading)}</h2>\n${rows.map(section).join('')}`,
      )
      .join('')}`,
    STYLE,
  );
}
