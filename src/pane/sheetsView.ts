import { isInput } from '../sheets/layout';
import { TOPS } from '../sheets/offeredTemplates';
import type { Template } from '../sheets/template';
import { h, heard } from './element';
import type { Outcome, PaneHost } from './host';
import { linkView } from './linkView';
import type { OneAtATime } from './oneAtATime';
import { recordsView } from './recordsView';
import { repairView } from './repairView';
import { sheetPicture } from './sheetPicture';
import type { View } from './tabs';

/** Every sheet that can be inserted, with the question it answers. */
export const sheetsView = (host: PaneHost, work: OneAtATime): View => ({
  id: 'sheets',
  label: 'Sheets',
  make: () =>
    h(
      'div',
      {},
      h(
        'p',
        { class: 'hint' },
        'Sheets that answer one question each. The demo job shows how one works; nothing that is there already is touched.',
      ),
      ...(host.insertSheet || host.missing === undefined ? [] : [h('p', { class: 'missing' }, host.missing)]),
      h('ul', { class: 'sheets' }, ...TOPS.map((top) => card(top, host, work))),
      ...linkView(host, work),
      ...(host.recalculate ? [anew(host.recalculate, work)] : []),
      ...(host.copyValues ? [handOver(host.copyValues, host.copyCosts, work)] : []),
      ...(host.prepareClientPage && host.newEstimate
        ? [estimates(host.prepareClientPage, host.printClientPage, host.newEstimate, work)]
        : []),
      ...(host.sheets ? [recordsView(host.sheets, work)] : []),
      ...repairView(host, work),
    ),
});

/** For cells that were calculated before the functions were known. */
const anew = (recalculate: NonNullable<PaneHost['recalculate']>, work: OneAtATime): HTMLElement =>
  h(
    'p',
    { class: 'hint' },
    'Do cells show #NAME? ',
    work.on(h('button', { type: 'button', class: 'plain' }, 'Recalculate'), recalculate),
  );

/** For people who have no Sweeptable: they could not calculate our formulas anew. */
const handOver = (
  copyValues: NonNullable<PaneHost['copyValues']>,
  costs: string | undefined,
  work: OneAtATime,
): HTMLElement =>
  h(
    'p',
    { class: 'hint foot' },
    'For people without Sweeptable: ',
    work.on(h('button', { type: 'button', class: 'plain' }, 'Copy this sheet as values'), copyValues),
    ...(costs === undefined ? [] : [` ${costs}`]),
  );

/** For a client, who must not see what the price is made of; and for the next client. */
function estimates(
  prepare: NonNullable<PaneHost['prepareClientPage']>,
  print: PaneHost['printClientPage'],
  newEstimate: NonNullable<PaneHost['newEstimate']>,
  work: OneAtATime,
): HTMLElement {
  const plain = (words: string, wish: () => Promise<Outcome>): HTMLElement =>
    work.on(h('button', { type: 'button', class: 'plain' }, words), wish);
  return h(
    'p',
    { class: 'hint' },
    'For a client, who is to see no cost: ',
    plain('Prepare the client page', prepare),
    ...(print ? [' ', plain('Print the client page', print)] : []),
    ' With the same prices: ',
    plain('New estimate from this one', newEstimate),
  );
}

/** Whether anything is to be typed into a sheet, so that it may be wanted empty. */
const hasInputs = ({ blocks }: Template): boolean =>
  blocks.some((block) => (block.kind === 'form' ? block.fields : block.columns).some(isInput));

function card(top: Template, { insertSheet }: PaneHost, work: OneAtATime): HTMLElement {
  const button = (label: string, filled: boolean, look: string) => {
    const made = h('button', { type: 'button', class: look }, label, heard(top.name));
    return insertSheet ? [work.on(made, () => insertSheet(top.id, filled))] : [];
  };
  return h(
    'li',
    { class: 'card sheet' },
    sheetPicture(top),
    h('div', {}, h('h2', {}, top.name), h('p', {}, top.answers)),
    h(
      'div',
      { class: 'buttons' },
      ...(hasInputs(top)
        ? [...button('Insert with the demo job', true, 'strong'), ...button('Insert empty', false, 'plain')]
        : button('Insert', true, 'strong')),
    ),
  );
}
