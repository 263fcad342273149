import SHOWN from '../sheets/answersInList.json';
import type { Lines } from '../sheets/inList';
import type { Template } from '../sheets/template';
import { h } from './element';

const shown: Readonly<Record<string, Lines>> = SHOWN;

/** The first answers of a sheet to the demo job, as it shows them, in letters that can be read; nothing of a sheet that is not ours. */
export function sheetPicture({ id, name, inList }: Template): HTMLElement[] {
  const lines = shown[id];
  if (!inList || !lines) return [];
  const [first = [], ...rest] = lines;
  const line = ([label = '', ...answers]: readonly string[]): HTMLElement =>
    h('tr', {}, h('th', { scope: 'row' }, label), ...answers.map((text) => h('td', {}, text)));
  const heads = h('tr', {}, ...first.map((text) => h('th', { scope: 'col' }, text)));
  return [
    h(
      'table',
      { class: 'pictured', 'aria-label': `First answers of ${name}` },
      ...('table' in inList
        ? [h('thead', {}, heads), h('tbody', {}, ...rest.map(line))]
        : [h('tbody', {}, ...lines.map(line))]),
    ),
  ];
}
