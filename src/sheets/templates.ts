import type { Template } from './template';

/** Put in by the build from `templates/`, each checked against the schema and for sense. */
declare const SWEEPTABLE_TEMPLATES: readonly Template[];

export const TEMPLATES: readonly Template[] = SWEEPTABLE_TEMPLATES;
