import type { Band } from '../../exposure/balance/heads/bands';
import { spoken } from '../../exposure/core/numbers';
import { h } from '../element';
import type { ReadTable } from './readTable';
import { readingText, shownPower } from './said';

/** What the table was taken for, for whoever doubts an answer: each head, and its light at each point. */
export const asRead = (table: ReadTable): HTMLElement =>
  h(
    'details',
    { class: 'card' },
    h('summary', {}, h('h3', {}, 'As it was read')),
    h('div', { class: 'entry' }, h('dl', {}, ...table.heads.flatMap((head) => headPart(table, head)))),
  );

type TableHead = ReadTable['heads'][number];

function headPart({ heads, points }: ReadTable, one: TableHead): HTMLElement[] {
  const { least, most, step, mostPops, isLocked, mayGoOff, metered } = one.head;
  const facts = [
    `metered at ${shownPower(one, metered)}`,
    `${spoken(least)} to ${spoken(most)} Ws in steps of ${spoken(step, 2)} stop`,
    ...(isLocked ? ['locked'] : []),
    ...(mayGoOff ? ['may go off'] : []),
    ...(mostPops > 1 ? [`up to ${mostPops} pops`] : []),
  ];
  const place = heads.indexOf(one);
  const readings = points.map(({ name, metered: { heads: lights }, below, plusMinus }) => {
    const band = lights[place];
    const stops = plusMinus?.[place];
    return `${name} ${below.includes(one.name) ? 'E' : lightText(band)}${stops === undefined ? '' : ` ± ${spoken(stops, 1)} stop`}`;
  });
  return [
    h('dt', {}, one.name),
    h('dd', {}, `${facts.join('; ')}.`),
    h('dd', {}, `Alone: ${readings.join('; ')}.`),
  ];
}

const lightText = (band: Band | undefined): string =>
  band === undefined || band.likely === 0 ? 'none' : readingText(Math.sqrt(band.likely));
