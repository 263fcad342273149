import { isFail } from '../../exposure/core/result';
import { h } from '../element';
import type { Outcome, TableHost } from '../host';
import type { OneAtATime } from '../oneAtATime';
import type { Balanced, Proposal } from '../../exposure/balance/heads/balanceHeads';
import { answerView } from './answerView';
import { areaOf } from './block';
import { lookUpModels, lookUpSet } from './known';
import { balanceSheet, readingIn } from './layTable';
import { readMeter } from './readCell';
import { BLANK } from '../../cells/quantityReader';
import { type ReadTable, readTable } from './readTable';
import { solve } from './solve';
import { writesFor } from './writes';

const LISTED = 8;
const FLOOR = 'f/1';

/** The view *Balance*: reads a table of the sheet, says which powers bring its points nearest to what is wanted, and writes them. */
export function balancePanel(host: TableHost, work: OneAtATime): HTMLElement {
  const place = h('div', { class: 'balance' });
  const floor = h('input', { id: 'pane-floor', value: FLOOR, autocomplete: 'off', spellcheck: 'false' });
  const show = (...content: readonly HTMLElement[]): void => place.replaceChildren(...content);

  const write = async (table: ReadTable, { heads }: Proposal): Promise<Outcome> => {
    const writes = writesFor(table, heads);
    if (typeof writes === 'string') return { refused: writes };
    const outcome = await host.writeCells(table.block, writes);
    if ('refused' in outcome) return outcome;
    return {
      ...outcome,
      done: `${outcome.done} Set the heads, meter each point with all of them lit, type that under Measured, and read the table again.`,
    };
  };

  const read = async (): Promise<Outcome> => {
    show();
    const least = readMeter(floor.value, 'The least that the meter reads', 1);
    if (least === BLANK || isFail(least) || least === 'none' || !('reads' in least))
      return { refused: 'The least that the meter reads must be an f-number, such as f/1.' };
    const block = await host.readBlock();
    if ('refused' in block) return block;
    const table = readTable(block, await lookUpModels(host.look), least.reads);
    if ('faults' in table) {
      show(faultList(table.faults));
      const [first = ''] = table.faults;
      return { refused: table.faults.length === 1 ? first : `${table.faults.length} things are wrong with the table: they are listed above.` }; // prettier-ignore
    }
    const answer = await found(table, show);
    // the button that had the keyboard is gone
    if (document.activeElement === document.body) readButton.focus();
    if (answer === undefined) return { done: 'Stopped. Nothing was changed.' };
    if (typeof answer === 'string') return { refused: answer };
    show(answerView(table, answer, work, (proposal) => write(table, proposal)));
    const { heads, points } = table;
    return { done: `${areaOf(block)} on “${block.sheet}” is read: ${heads.length} ${heads.length === 1 ? 'head' : 'heads'}, ${points.length} ${points.length === 1 ? 'point' : 'points'}.` }; // prettier-ignore
  };

  const lay = async (): Promise<Outcome> => {
    const known = await lookUpSet(host.look, readingIn);
    const outcome = await host.laySheet(balanceSheet(known));
    if ('refused' in outcome) return outcome;
    const from = known ? `It has the lights of ${known.from}.` : 'It has a demo job, as there is no Lights on set and no Pops plan here.'; // prettier-ignore
    return { ...outcome, done: `${outcome.done} ${from}` };
  };

  const readButton = h('button', { type: 'button', class: 'strong' }, 'Read the selected table');
  return h(
    'div',
    {},
    h(
      'p',
      { class: 'hint' },
      'Which powers bring several points nearest to what each shall read, all at once. Meter each head alone at each point, in a table of the sheet: a row a point, a column a head.',
    ),
    h(
      'p',
      { class: 'buttons first' },
      work.on(readButton, read),
      work.on(h('button', { type: 'button', class: 'plain' }, 'Lay a table'), lay),
    ),
    h('p', { class: 'floor' }, h('label', { for: 'pane-floor' }, 'The meter shows E below'), floor),
    place,
  );
}

const faultList = (faults: readonly string[]): HTMLElement =>
  h(
    'section',
    { class: 'caution', 'aria-labelledby': 'pane-faults' },
    h('h3', { id: 'pane-faults' }, 'What is wrong with the table'),
    h(
      'ul',
      {},
      ...faults.slice(0, LISTED).map((fault) => h('li', {}, fault)),
      ...(faults.length > LISTED ? [h('li', {}, `and ${faults.length - LISTED} more.`)] : []),
    ),
  );

/** Works it out while the view says how far it is; undefined where it was stopped, a sentence where there is no answer. */
async function found(
  { points, heads }: ReadTable,
  show: (...content: readonly HTMLElement[]) => void,
): Promise<Balanced | string | undefined> {
  const bar = h('progress', { max: 1, value: 0, 'aria-label': 'How far the search is' });
  const stop = h('button', { type: 'button', class: 'plain' }, 'Stop');
  const running = solve(
    { points: points.map(({ metered }) => metered), heads: heads.map(({ head }) => head) },
    (part) => {
      bar.value = Math.max(bar.value, part);
    },
  );
  stop.addEventListener('click', () => running.stop());
  show(h('p', { class: 'searching' }, bar, stop));
  const answer = await running.answer;
  show();
  return isFail(answer) ? answer.message : answer;
}
