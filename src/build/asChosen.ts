import { createHash } from 'node:crypto';
import { KEPT_COLOURS } from '../hosts/workbench/page/keptColours';

const LINE = `try { const kept = localStorage.getItem('${KEPT_COLOURS}'); if (kept) if (!matchMedia('(forced-colors: active)').matches) document.documentElement.dataset.theme = kept; } catch {}`;

/**
 * A script for the head of a page: light or dark as the workbench was set against the system, before anything is drawn.
 * Colours that a person has set for all programs go before that, and a browser may forbid to look.
 */
export const AS_CHOSEN = `<script>${LINE}</script>`;

/** What the policy of such a page knows it by. */
export const AS_CHOSEN_SUM = `'sha256-${createHash('sha256').update(LINE).digest('base64')}'`;
