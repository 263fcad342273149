import type { Template } from './template';

declare const SWEEPTABLE_TEMPLATES: { readonly long: readonly Template[] };

/** The sheets that outweigh all others: a page fetches them late. */
export const LONG: readonly Template[] = SWEEPTABLE_TEMPLATES.long;
