import { CATALOGUE } from '../catalogue';
import { type AnyRow, FAMILIES, type Family } from '../catalogue/types';
import { h } from './element';
import { functionEntry } from './functionEntry';
import type { PaneHost } from './host';
import type { OneAtATime } from './oneAtATime';
import { search } from './search';
import type { View } from './tabs';

/** Every function of the catalogue, with its help, and a field to find one. */
export const functionsView = (host: PaneHost, work: OneAtATime): View => ({
  id: 'functions',
  label: 'Functions',
  make: () => list(host, work),
});

function list(host: PaneHost, work: OneAtATime): HTMLElement {
  const entries = new Map(CATALOGUE.map((row) => [row, functionEntry(row, host, work)]));
  const field = h('input', {
    type: 'search',
    id: 'pane-find',
    autocomplete: 'off',
    spellcheck: 'false',
    'aria-describedby': 'pane-find-hint',
  });
  const count = h('p', { role: 'status', class: 'hint' });
  const results = h('div');

  const show = (): void => {
    const found = search(CATALOGUE, field.value);
    const say = countText(found.length, field.value.trim());
    if (count.textContent !== say) count.textContent = say;
    results.replaceChildren(
      ...[...byFamily(found)].map(([family, rows]) =>
        h(
          'section',
          { 'aria-labelledby': `pane-${family}` },
          h('h2', { id: `pane-${family}` }, FAMILIES[family]),
          h(
            'ul',
            { class: 'card functions' },
            ...rows.flatMap((row) => {
              const entry = entries.get(row);
              return entry ? [entry] : [];
            }),
          ),
        ),
      ),
    );
  };
  field.addEventListener('input', show);
  show();

  return h(
    'div',
    {},
    h('label', { for: 'pane-find', class: 'label' }, 'Find a function'),
    field,
    h('p', { id: 'pane-find-hint', class: 'hint' }, 'By name or by a word of the trade: bellows, pops, ND.'),
    count,
    results,
  );
}

/** Families in the order of their best function, so that the best of all stands first. */
function byFamily(rows: readonly AnyRow[]): Map<Family, AnyRow[]> {
  const groups = new Map<Family, AnyRow[]>();
  for (const row of rows) groups.set(row.family, [...(groups.get(row.family) ?? []), row]);
  return groups;
}

function countText(count: number, query: string): string {
  if (query === '') return `${count} functions.`;
  if (count === 0) return `No function has “${query}”. Try one word, or the start of one.`;
  return `${count} ${count === 1 ? 'function has' : 'functions have'} “${query}”.`;
}
