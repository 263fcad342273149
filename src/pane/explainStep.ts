import type { AnswerText, ArgumentReading, Step } from '../explain/explain';
import type { CellReading } from '../explain/reading';
import { SOURCES } from '../catalogue/sources';
import { sourceWords } from '../catalogue/words';
import { at } from '../exposure/core/at';
import { h, heard } from './element';

/** One call of a formula: how its cells were read, its formula with the numbers in it, its answer. */
export function explainStep(step: Step, number: number, count: number): HTMLElement {
  const { row } = step;
  const isPart = count > 1;
  return h(
    'section',
    { class: 'card step', 'aria-labelledby': `pane-step-${number}` },
    h('h3', { id: `pane-step-${number}` }, isPart ? `${number}. ${row.id}` : row.id),
    h('p', {}, row.gives),
    ...(isPart ? [h('p', {}, h('code', {}, step.text))] : []),
    ...part('Read as', h('dl', {}, ...step.arguments.map(argument))),
    ...part('Formula', h('p', {}, row.formula)),
    ...numbers(step),
    ...part('Answer', answers(step)),
    ...(row.caution === undefined
      ? []
      : [h('div', { class: 'caution' }, h('h4', {}, 'Take care'), h('p', {}, row.caution))]),
    more(step),
  );
}

const part = (heading: string, body: HTMLElement): HTMLElement[] => [h('h4', {}, heading), body];

/** The pointer between what is in a cell and what it was taken for. */
const readAs = (): HTMLElement[] => [h('span', { class: 'pointer' }), heard(' read as ')];

function argument({ arg, given, cells, more: others, unknown }: ArgumentReading): HTMLElement {
  const isLeftOut = given === '' && arg.optional;
  const isCell = given !== '' && given !== cells[0]?.given && given !== `"${cells[0]?.given}"`;
  return h(
    'div',
    isLeftOut ? { class: 'left-out' } : {},
    h('dt', {}, arg.name, ...(isCell ? [' ', h('code', {}, given)] : [])),
    ...(isLeftOut ? [' '] : []),
    ...(unknown === undefined ? [] : [h('dd', { class: 'optional' }, unknown)]),
    ...cells.map((cell) => reading(cell, given === '')),
    ...(others > 0 ? [h('dd', { class: 'optional' }, `and ${others} more`)] : []),
  );
}

function reading({ given, meaning, isRefused }: CellReading, isAbsent: boolean): HTMLElement {
  if (isRefused) return h('dd', { class: 'wrong' }, given, h('strong', {}, ' not read: '), meaning);
  return h('dd', {}, ...(isAbsent ? [] : [given, ...readAs()]), meaning);
}

function numbers({ numbers: text, where, answers: { length }, moreAnswers }: Step): HTMLElement[] {
  const first = length + moreAnswers > 1 ? 'First cell: ' : '';
  if (text !== undefined) return [h('p', { class: 'numbers-in' }, first, h('strong', {}, text))];
  if (where.length === 0) return [];
  const lines = where.map(({ name, value }) => h('li', {}, `${name} = `, h('strong', {}, value)));
  return [h('p', { class: 'numbers-in' }, `${first}where`), h('ul', {}, ...lines)];
}

function answers({ answers: shown, moreAnswers, unknown }: Step): HTMLElement {
  if (unknown !== undefined) return h('p', { class: 'optional' }, unknown);
  if (shown.length === 1 && moreAnswers === 0) return h('p', {}, ...answer(at(shown, 0)));
  const rest = moreAnswers > 0 ? [h('li', { class: 'optional' }, `and ${moreAnswers} more`)] : [];
  return h('ul', {}, ...shown.map((one) => h('li', {}, ...answer(one))), ...rest);
}

const answer = ({ text, error }: AnswerText): (HTMLElement | string)[] =>
  error === undefined
    ? [h('strong', {}, text)]
    : [h('span', { class: 'wrong' }, h('strong', {}, `${error} `), text)];

function more({ row }: Step): HTMLElement {
  const sources = row.sources.map((key) => {
    const [kind, rest] = sourceWords(SOURCES[key]);
    return h('li', {}, h('strong', {}, kind), rest);
  });
  return h(
    'details',
    {},
    h('summary', {}, h('h4', {}, row.notes === undefined ? 'Sources' : 'Notes and sources')),
    ...(row.notes === undefined ? [] : [h('p', {}, row.notes)]),
    h('ul', { class: 'sources' }, ...sources),
  );
}
