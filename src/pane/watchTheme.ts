const QUERIES = ['(prefers-color-scheme: dark)', '(forced-colors: active)'];

/** Tells whenever the page's colours change, by the system's choice or by the host's; gives back how to stop. */
export function watchTheme(tell: () => void): () => void {
  const system = QUERIES.map((query) => matchMedia(query));
  for (const choice of system) choice.addEventListener('change', tell);
  const host = new MutationObserver(tell);
  host.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  return () => {
    for (const choice of system) choice.removeEventListener('change', tell);
    host.disconnect();
  };
}
