import { NAMESPACE } from '../catalogue';
import { explain } from '../explain/explain';
import { h } from './element';
import { explainStep } from './explainStep';
import type { PaneHost, SelectedCell } from './host';
import type { View } from './tabs';

/** The selected cell, explained: watched only while it can be seen. */
export function explainView(watch: NonNullable<PaneHost['watchCell']>): View {
  // Spoken once for each cell that is come to; the numbers below may change as often as they like.
  const status = h('p', { role: 'status', class: 'heard' });
  const place = h('div', { class: 'explained' });
  let last: SelectedCell | undefined;
  return {
    id: 'explain',
    label: 'Explain',
    make: () => h('div', {}, status, place),
    shown: () =>
      watch((cell) => {
        const isSame = cell?.address === last?.address && cell?.formula === last?.formula;
        last = cell;
        if (!isSame) status.textContent = cell === undefined ? '' : headline(cell);
        const keep = isSame ? keepOpen(place) : () => {};
        place.replaceChildren(...content(cell));
        keep();
      }),
  };
}

/** Notes which parts are open and where the keyboard is; gives back how to have it so again. */
function keepOpen(place: HTMLElement): () => void {
  const before = [...place.querySelectorAll('details')].map((details) => ({
    isOpen: details.open,
    isFocused: details.contains(document.activeElement),
  }));
  return () => {
    for (const [i, details] of place.querySelectorAll('details').entries()) {
      details.open = before[i]?.isOpen ?? false;
      if (before[i]?.isFocused) details.querySelector('summary')?.focus();
    }
  };
}

function content(cell: SelectedCell | undefined): HTMLElement[] {
  if (cell === undefined) return [hint('Select one cell, and its formula is explained here.')];
  const { steps, remarks } = explain(cell.formula, cell.look);
  const nothing = steps.length === 0 && remarks.length === 0;
  return [
    h('h2', {}, headline(cell)),
    ...(cell.formula === '' ? [] : [h('p', {}, h('code', {}, cell.formula))]),
    ...(nothing ? [hint(nothingText(cell))] : []),
    ...remarks.map((remark) => hint(remark)),
    ...steps.map((step, i) => explainStep(step, i + 1, steps.length)),
  ];
}

const hint = (text: string): HTMLElement => h('p', { class: 'hint' }, text);

const headline = ({ address, shown }: SelectedCell): string =>
  shown === '' ? `${address} shows nothing` : `${address} shows ${shown}`;

const nothingText = ({ formula }: SelectedCell): string =>
  formula === ''
    ? `There is no formula in this cell. If a list spills into it, select the cell where the list begins.`
    : `This formula has no function of Sweeptable: they begin with ${NAMESPACE}.`;
