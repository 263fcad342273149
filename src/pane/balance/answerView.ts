import type { Balanced, Proposal } from '../../exposure/balance/heads/balanceHeads';
import { h, heard } from '../element';
import type { Outcome } from '../host';
import type { OneAtATime } from '../oneAtATime';
import { asRead } from './asRead';
import { pointMap } from './pointMap';
import type { ReadTable } from './readTable';
import { type HeadLine, type PointLine, type Said, saidOf } from './said';

type Write = (proposal: Proposal) => Promise<Outcome>;

/** The answer: what to set, what each point then reads, what keeps it from being nearer. */
export function answerView(table: ReadTable, answer: Balanced, work: OneAtATime, write: Write): HTMLElement {
  const said = saidOf(table, answer);
  const button = (label: string, look: string, proposal: Proposal): HTMLElement =>
    h('p', { class: 'buttons' }, work.on(h('button', { type: 'button', class: look }, label), () => write(proposal))); // prettier-ignore
  return h(
    'div',
    { class: 'answer' },
    h('h2', {}, said.headline),
    ...said.sure.map((sentence) => h('p', {}, sentence)),
    h('h3', {}, 'Heads'),
    headTable(said.heads, said.hasPops, 'Heads'),
    ...(answer.isLeft ? [] : [button('Write the new powers to the sheet', 'strong', answer.after)]),
    h('h3', {}, 'Points'),
    pointTable(said.points, table.isChecked ? 'Measured' : 'Before'),
    ...pointMap(said.points).map((map) => h('div', { class: 'map' }, map, key())),
    ...list('What keeps them apart', said.limits),
    ...fewerPart(said, answer, button),
    ...list('What is in doubt', said.doubts),
    asRead(table),
  );
}

const key = (): HTMLElement =>
  h('p', { class: 'hint' }, 'As seen from the camera. Numbers as in the table; a triangle points up where a point is over, down where it is under.'); // prettier-ignore

const list = (heading: string, sentences: readonly string[]): HTMLElement[] =>
  sentences.length === 0
    ? []
    : [h('h3', {}, heading), h('ul', { class: 'sentences' }, ...sentences.map((one) => h('li', {}, one)))];

function fewerPart(
  { fewer, hasPops }: Said,
  answer: Balanced,
  button: (label: string, look: string, proposal: Proposal) => HTMLElement,
): HTMLElement[] {
  if (!fewer || !answer.fewer) return [];
  const isNone = fewer.heads.every(({ isChanged }) => !isChanged);
  return [
    h('h3', {}, 'Fewer changes'),
    h('p', {}, fewer.headline),
    ...(isNone
      ? []
      : [
          headTable(
            fewer.heads.filter(({ isChanged }) => isChanged),
            hasPops,
            'Fewer changes',
          ),
          button('Write these instead', 'plain', answer.fewer),
        ]),
  ];
}

const cells = (tag: 'th' | 'td', texts: readonly string[]): HTMLElement[] =>
  texts.map((text) => h(tag, tag === 'th' ? { scope: 'col' } : {}, text));

function headTable(heads: readonly HeadLine[], hasPops: boolean, name: string): HTMLElement {
  return h(
    'table',
    { 'aria-label': name },
    h('thead', {}, h('tr', {}, ...cells('th', ['Head', 'Now', 'Set to', 'Turn by', ...(hasPops ? ['Pops'] : [])]))), // prettier-ignore
    h(
      'tbody',
      {},
      ...heads.map(({ name: head, now, setTo, turn, pops, isChanged }) =>
        h(
          'tr',
          isChanged ? { class: 'changed' } : {},
          h('th', { scope: 'row' }, head),
          ...cells('td', [now, setTo, turn, ...(hasPops ? [String(pops)] : [])]),
        ),
      ),
    ),
  );
}

function pointTable(points: readonly PointLine[], before: string): HTMLElement {
  return h(
    'table',
    { 'aria-label': 'Points' },
    h('thead', {}, h('tr', {}, ...cells('th', ['Point', 'Wanted', before, 'After', 'Off by']))),
    h(
      'tbody',
      {},
      ...points.map(({ name, wanted, before: was, after, missBefore, miss, isOff }, i) =>
        h(
          'tr',
          {},
          h('th', { scope: 'row' }, `${i + 1} ${name}`),
          h('td', {}, wanted),
          h('td', {}, was, ...(missBefore === '' || missBefore === '0' ? [] : [heard(`, ${missBefore}`)])),
          h('td', {}, after),
          h('td', isOff ? { class: 'wrong' } : {}, miss),
        ),
      ),
    ),
  );
}
