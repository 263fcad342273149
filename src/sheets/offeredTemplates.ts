import type { Template } from './template';

/** Put in by the build from `templates/`, each checked against the schema and for sense. */
declare const SWEEPTABLE_TEMPLATES: {
  readonly short: readonly Template[];
  readonly tops: readonly Template[];
};

/** The sheets that a page has from its start. */
export const SHORT: readonly Template[] = SWEEPTABLE_TEMPLATES.short;

/** Every sheet for a list. Of a long one this is the top alone, and not to be laid. */
export const TOPS: readonly Template[] = [...SHORT, ...SWEEPTABLE_TEMPLATES.tops];

/** Fetches what `templateOf` would have to wait for. Where that fails it rejects, and the next call tries again. */
export const fetchLong = async (): Promise<readonly Template[]> =>
  (await import(/* webpackChunkName: "long-sheets" */ './longTemplates')).LONG;

/** The sheet of an id, to be laid. A long one is fetched when it is first asked for: rejects as `fetchLong` does. */
export async function templateOf(id: string): Promise<Template | undefined> {
  const isIt = (template: Template): boolean => template.id === id;
  const short = SHORT.find(isIt);
  return short || !TOPS.some(isIt) ? short : (await fetchLong()).find(isIt);
}
