import type { Join, Way } from '../sheets/links/findJoins';
import type { ColumnChange } from '../sheets/links/linkColumns';
import { h } from './element';
import type { PaneHost } from './host';
import type { OneAtATime } from './oneAtATime';
import { joinsFound, NOTHING_TO_LINK } from './sentences';

type Able = Required<Pick<PaneHost, 'findJoins' | 'link'>>;
const isAble = (host: PaneHost): host is PaneHost & Able =>
  host.findJoins !== undefined && host.link !== undefined;

/** For sheets that were inserted apart, or whose partner is gone: shows what would change before it changes. */
export function linkView(host: PaneHost, work: OneAtATime): HTMLElement[] {
  if (!isAble(host)) return [];
  const found = h('div');
  const look = h('button', { type: 'button', class: 'plain' }, 'Look for sheets to link');
  work.on(look, async () => {
    const outcome = await host.findJoins();
    found.replaceChildren();
    if ('refused' in outcome) return outcome;
    found.append(...outcome.joins.map((join) => offer(join, host, work)));
    if (outcome.joins.length === 0) return { done: NOTHING_TO_LINK };
    return { done: joinsFound([...new Set(outcome.joins.map(({ sheet }) => sheet))]) };
  });
  return [
    h(
      'details',
      { class: 'card repair' },
      h('summary', {}, h('h2', {}, 'Link sheets')),
      h(
        'div',
        { class: 'entry' },
        h(
          'p',
          {},
          'A sheet that comes in after Heads or Pops plan looks up in it. One that was there before has numbers of its own: here it learns to. Nothing changes before you say so.',
        ),
        h('p', { class: 'buttons' }, look),
        found,
      ),
    ),
  ];
}

const nameOf = ({ to }: Way): string => (to === 'typed' ? 'nothing: type it there' : to.sheet);

function offer(join: Join, host: Able, work: OneAtATime): HTMLElement {
  const { sheet, title, lost, left, ways } = join;
  const place = h('div');
  const choose = h('select', {}, ...ways.map((way, i) => h('option', { value: i }, nameOf(way))));
  const made = h(
    'section',
    { class: 'join' },
    h('h3', {}, `“${title}” on “${sheet}”`),
    ...(lost.length === 0
      ? []
      : [
          h(
            'p',
            { class: 'missing' },
            `The sheet is gone that told ${lost.join(', ')}. They show nothing now.`,
          ),
        ]),
    h('p', {}, h('label', {}, 'Look up in ', choose)),
    place,
    ...left.map((words) => h('p', {}, words)),
  );
  const show = (): void => {
    const way = ways[Number(choose.value)];
    place.replaceChildren(...(way ? wayView(join, way, host, work, () => made.remove()) : []));
  };
  choose.addEventListener('change', show);
  show();
  return made;
}

/** What a way would do, column by column, and the button that does it. */
function wayView({ sheet }: Join, way: Way, host: Able, work: OneAtATime, over: () => void): HTMLElement[] {
  // A column that nobody types in goes with the others, and stands by itself only where there are none.
  const typed = way.columns.filter(({ follows }) => !follows);
  const listed = typed.length > 0 ? typed : way.columns;
  const entries = listed.map((column) => columnEntry(column));
  const button = h(
    'button',
    { type: 'button', class: 'strong' },
    way.to === 'typed' ? 'Make inputs of these' : `Look these up in ${way.to.sheet}`,
  );
  work.on(button, async () => {
    const chosen = entries.filter(({ box }) => box.checked).map(({ column }) => column);
    if (chosen.length === 0) return { refused: 'No column is chosen. Nothing was changed.' };
    const following = typed.length > 0 ? way.columns.filter(({ follows }) => follows) : [];
    const outcome = await host.link({ ...way, sheet, columns: [...chosen, ...following] });
    if ('done' in outcome) over();
    return outcome;
  });
  return [
    h(
      'ul',
      { class: 'mended', 'aria-label': 'Columns before and after' },
      ...entries.map(({ item }) => item),
    ),
    ...formulas(listed),
    h('p', { class: 'buttons' }, button),
  ];
}

/** What the cells of each column would hold: long to read, and alike but for the column. */
function formulas(columns: readonly ColumnChange[]): HTMLElement[] {
  const lines = columns.flatMap(({ column, to }) => {
    const formula = to.find((held) => held.formula !== undefined)?.formula;
    return formula === undefined ? [] : [h('li', {}, `${column}: `, h('code', {}, formula))];
  });
  if (lines.length === 0) return [];
  return [
    h(
      'details',
      {},
      h('summary', {}, 'The formulas that they then hold'),
      h('ul', { class: 'mended' }, ...lines),
    ),
  ];
}

/** One column: what it would hold, and each cell that would show something else. What somebody typed is not taken unasked. */
function columnEntry(column: ColumnChange) {
  const others = column.cells.filter(({ isOther }) => isOther);
  const box = h('input', { type: 'checkbox' });
  box.checked = others.length === 0;
  const changed = column.cells.filter(({ before, after }) => before !== after);
  const item = h(
    'li',
    {},
    h('label', {}, box, ' ', h('strong', {}, column.column)),
    ...(others.length > 0
      ? [
          h(
            'p',
            { class: 'missing' },
            `Typed otherwise in ${others.length === 1 ? 'one row' : `${others.length} rows`}: tick it to have the list’s.`,
          ),
        ]
      : []),
    h(
      'p',
      {},
      ...(changed.length === 0
        ? ['Shows what it shows now.']
        : changed.flatMap(({ cell, key, before, after }) => [
            `${cell}, ${key}: ${said(before)} → ${said(after)}`,
            h('br'),
          ])),
    ),
  );
  return { column, box, item };
}

const said = (value: string): string => (value === '' ? 'nothing' : value);
