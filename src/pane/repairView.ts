import { h } from './element';
import type { MendedCell, Mended, PaneHost } from './host';
import type { OneAtATime } from './oneAtATime';

const SHOWN = 50;

type Able = Required<Pick<PaneHost, 'findLost' | 'mendLost' | 'takeBack'>>;

const isAble = (host: PaneHost): host is PaneHost & Able =>
  host.findLost !== undefined && host.mendLost !== undefined && host.takeBack !== undefined;

/** For formulas that lost the names of our functions: shows what would change before it changes, and takes it back. */
export function repairView(host: PaneHost, work: OneAtATime): HTMLElement[] {
  if (!isAble(host)) return [];
  const found = h('div');
  const look = h('button', { type: 'button', class: 'plain' }, 'Look for lost names');
  work.on(look, async () => {
    const outcome = await host.findLost();
    show(found, 'cells' in outcome ? offer(found, outcome.cells, host, work) : []);
    return outcome;
  });
  return [
    h(
      'details',
      { class: 'card repair' },
      h('summary', {}, h('h2', {}, 'Repair')),
      h(
        'div',
        { class: 'entry' },
        h(
          'p',
          {},
          'A workbook that was opened without Sweeptable may hold ',
          h('code', {}, '_xldudf_SWEEP_'),
          ' or the path of a file where the name of a function was. Nothing changes before you say so.',
        ),
        h('p', { class: 'buttons' }, look),
        found,
      ),
    ),
  ];
}

const show = (place: HTMLElement, content: readonly HTMLElement[]): void => place.replaceChildren(...content);

/** What would change, and the button that changes it. */
function offer(
  place: HTMLElement,
  cells: readonly MendedCell[],
  host: Able,
  work: OneAtATime,
): HTMLElement[] {
  if (cells.length === 0) return [];
  const mend = h('button', { type: 'button', class: 'strong' }, `Mend ${cells.length}`);
  work.on(mend, async () => {
    const outcome = await host.mendLost(cells);
    if ('cells' in outcome) show(place, undo(place, outcome, host, work));
    return outcome;
  });
  return [list(cells), h('p', { class: 'buttons' }, mend)];
}

function undo(
  place: HTMLElement,
  { cells }: Extract<Mended, { cells: unknown }>,
  host: Able,
  work: OneAtATime,
): HTMLElement[] {
  if (cells.length === 0) return [];
  const back = h('button', { type: 'button', class: 'plain' }, 'Take back');
  work.on(back, async () => {
    const outcome = await host.takeBack(cells);
    if ('done' in outcome) show(place, []);
    return outcome;
  });
  return [list(cells), h('p', { class: 'buttons' }, back)];
}

const list = (cells: readonly MendedCell[]): HTMLElement =>
  h(
    'ul',
    { class: 'mended', 'aria-label': 'Formulas before and after' },
    ...cells.slice(0, SHOWN).map(entry),
    ...(cells.length > SHOWN ? [h('li', {}, `and ${cells.length - SHOWN} more.`)] : []),
  );

const entry = ({ sheet, cell, before, after }: MendedCell): HTMLElement =>
  h(
    'li',
    {},
    h('strong', {}, `${cell} on “${sheet}”`),
    h('p', {}, 'Before: ', h('code', {}, before)),
    h('p', {}, 'After: ', h('code', {}, after)),
  );
