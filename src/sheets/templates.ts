import { LONG } from './longTemplates';
import { SHORT } from './offeredTemplates';
import type { Template } from './template';

/** Every sheet as a whole, for who has no page to load. */
export const TEMPLATES: readonly Template[] = [...SHORT, ...LONG];
