import { h } from './element';

/** What can hurt somebody, at the foot of every view. */
export const cautions = (): HTMLElement =>
  h(
    'section',
    { class: 'care', 'aria-labelledby': 'pane-care' },
    h('h2', { id: 'pane-care' }, 'Take care'),
    h(
      'p',
      {},
      'Flash equipment runs on mains current and keeps a dangerous charge after it is unplugged; lamps and tubes burn. Repeated flashes can harm people who are sensitive to them: warn everyone on set. The maker’s instructions and local codes come first, and wiring is work for a licensed electrician.',
    ),
  );
