import { h } from './element';

/** One part of the pane, behind a tab of its own. */
export interface View {
  readonly id: string;
  readonly label: string;
  /** Makes the content, when it is first wanted. */
  readonly make: () => HTMLElement;
  /** Called each time the view comes into sight; gives back what to do when it leaves. */
  readonly shown?: () => () => void;
}

export interface Tabs {
  readonly bar: HTMLElement;
  readonly panels: readonly HTMLElement[];
  dispose(): void;
}

/** Tabs in the pattern that keyboards and screen readers know: one stop, arrows between, the panel follows. */
export function makeTabs(views: readonly View[], scroller: HTMLElement, left: () => void): Tabs {
  const buttons = views.map(({ id, label }) =>
    h('button', { type: 'button', role: 'tab', id: `tab-${id}`, 'aria-controls': `panel-${id}` }, label),
  );
  const panels = views.map(({ id }) =>
    h('div', { role: 'tabpanel', id: `panel-${id}`, 'aria-labelledby': `tab-${id}`, class: 'panel' }),
  );
  const places = views.map(() => 0);
  let current = -1;
  let leave: (() => void) | undefined;

  function show(index: number): void {
    if (index === current) return;
    if (current >= 0) {
      places[current] = scroller.scrollTop;
      left();
    }
    leave?.();
    current = index;
    for (const [i, button] of buttons.entries()) {
      button.setAttribute('aria-selected', String(i === index));
      button.tabIndex = i === index ? 0 : -1;
    }
    for (const [i, panel] of panels.entries()) panel.hidden = i !== index;
    const view = views[index];
    const panel = panels[index];
    if (view && panel?.childElementCount === 0) panel.append(view.make());
    leave = view?.shown?.();
    scroller.scrollTop = places[index] ?? 0;
  }

  const reached: Readonly<Record<string, (from: number) => number>> = {
    ArrowRight: (from) => (from + 1) % views.length,
    ArrowLeft: (from) => (from + views.length - 1) % views.length,
    Home: () => 0,
    End: () => views.length - 1,
  };
  const bar = h('div', { role: 'tablist', class: 'tabs', 'aria-label': 'Parts of Sweeptable' }, ...buttons);
  bar.addEventListener('keydown', (event) => {
    const next = reached[event.key]?.(current);
    if (next === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    show(next);
    buttons[next]?.focus();
  });
  for (const [i, button] of buttons.entries()) button.addEventListener('click', () => show(i));
  show(0);
  return { bar, panels, dispose: () => leave?.() };
}
