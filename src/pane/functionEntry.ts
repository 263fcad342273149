import { SOURCES, type Source } from '../catalogue/sources';
import type { AnyRow, Arg, Example } from '../catalogue/types';
import {
  answerText,
  exampleAnswer,
  exampleFormula,
  fallbackText,
  formsText,
  functionName,
  signature,
  sourceWords,
  unitOf,
} from '../catalogue/words';
import { rangeText } from '../exposure/core/range';
import { copyText } from './copy';
import { h, heard } from './element';
import type { PaneHost } from './host';
import { plainNumber, unbroken } from './numberText';
import type { OneAtATime } from './oneAtATime';

/** One function: its name and what it gives, opening to all that is known of it. */
export function functionEntry(row: AnyRow, host: PaneHost, work: OneAtATime): HTMLElement {
  const details = h(
    'details',
    {},
    h('summary', {}, h('h3', {}, row.id), h('span', { class: 'gives' }, row.gives)),
  );
  // Filled when it is first opened: most are never.
  details.addEventListener(
    'toggle',
    () => details.append(h('div', { class: 'entry' }, ...content(row, host, work))),
    { once: true },
  );
  return h('li', {}, details);
}

/** What most people look for first comes first: how it is typed, and an example. */
const content = (row: AnyRow, host: PaneHost, work: OneAtATime): HTMLElement[] => [
  h('p', {}, h('code', {}, functionName(row).replace(row.id, ''), signature(row))),
  h('p', {}, answerText(row)),
  ...part(
    row.examples.length === 1 ? 'Example' : 'Examples',
    h('ul', { class: 'examples' }, ...row.examples.map((shown) => example(row, shown, host, work))),
  ),
  ...(row.caution === undefined
    ? []
    : [h('div', { class: 'caution' }, h('h4', {}, 'Take care'), h('p', {}, row.caution))]),
  ...part('Values', h('dl', {}, ...(row.args as readonly Arg[]).flatMap(argument))),
  ...part('Formula', h('p', {}, row.formula)),
  ...(row.notes === undefined ? [] : part('Notes', h('p', {}, row.notes))),
  ...part(
    'Where it comes from',
    h('ul', { class: 'sources' }, ...row.sources.map((key) => source(SOURCES[key]))),
  ),
];

const part = (heading: string, body: HTMLElement): HTMLElement[] => [h('h4', {}, heading), body];

function argument(arg: Arg): HTMLElement[] {
  const facts: readonly (readonly [string, string])[] = [
    ['Unit', unitOf(arg)],
    ['Range', rangeText(arg.range)],
    ['Write', unbroken(formsText(arg))],
  ];
  const known = facts.flatMap(([label, text]) =>
    text === '' ? [] : [h('span', { class: 'fact' }, `${label}: `), `${text}. `],
  );
  return [
    h('dt', {}, arg.name, ...(arg.optional ? [h('span', { class: 'optional' }, ' may be left out')] : [])),
    h('dd', {}, `${arg.about}.`),
    h('dd', {}, ...known, arg.fallback === undefined ? '' : fallbackText(arg)),
  ];
}

function example(row: AnyRow, shown: Example, { putFormula }: PaneHost, work: OneAtATime): HTMLElement {
  const formula = exampleFormula(row, shown);
  const code = h('code', {}, formula);
  const gives = exampleAnswer(shown, plainNumber);
  const button = h('button', { type: 'button', class: 'plain' });
  button.append(putFormula ? 'Put into the selected cell' : 'Copy', heard(formula));
  work.on(button, () => (putFormula ? putFormula(formula) : copyText(code)));
  return h(
    'li',
    {},
    code,
    h('p', {}, 'gives ', h('strong', {}, gives), row.result.unit ? ` ${row.result.unit}` : ''),
    button,
  );
}

function source(from: Source): HTMLElement {
  const [kind, rest] = sourceWords(from);
  return h('li', {}, h('strong', {}, kind), rest);
}
