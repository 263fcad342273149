import { byUse } from '../sheets/byUse';
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
      ...(host.newJob ? [newJob(host.newJob, work)] : []),
      h(
        'p',
        { class: 'hint' },
        'Sheets that answer one question each, and some of the answers to the demo job. Inserting one touches nothing that is there already.',
      ),
      ...(host.insertSheet || host.missing === undefined ? [] : [h('p', { class: 'missing' }, host.missing)]),
      h('ul', { class: 'sheets' }, ...byUse(TOPS).map((top) => entry(top, host, work))),
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

/** The one offer to begin with. */
const newJob = (begin: NonNullable<PaneHost['newJob']>, work: OneAtATime): HTMLElement =>
  h(
    'section',
    { class: 'card begin', 'aria-labelledby': 'pane-new-job' },
    h('h2', { id: 'pane-new-job' }, 'A whole job'),
    h(
      'ol',
      {},
      h('li', {}, 'Heads: what you own'),
      h('li', {}, 'Pops plan: what each light reads, and what to set'),
      h('li', {}, 'Set card: what to take to the set and tick'),
    ),
    work.on(h('button', { type: 'button', class: 'strong' }, 'New job'), begin),
  );

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

function entry(top: Template, { insertSheet }: PaneHost, work: OneAtATime): HTMLElement {
  const button = (label: string, filled: boolean) => {
    const made = h('button', { type: 'button', class: 'quiet' }, label, heard(top.name));
    return insertSheet ? [work.on(made, () => insertSheet(top.id, filled))] : [];
  };
  return h(
    'li',
    {},
    h('h2', {}, top.name),
    h('p', {}, top.answers),
    ...sheetPicture(top),
    h(
      'div',
      { class: 'buttons' },
      ...(hasInputs(top)
        ? [...button('Insert with the demo job', true), ...button('Insert empty', false)]
        : button('Insert', true)),
    ),
  );
}
