import { h } from './element';

/** What can hurt somebody: unfolded at first, and one press away ever after. */
export const cautions = (isOpen: boolean): HTMLElement =>
  h(
    'details',
    { class: 'care', ...(isOpen ? { open: true } : {}) },
    h('summary', {}, h('h2', {}, 'Take care')),
    h(
      'p',
      {},
      'Flash equipment runs on mains current and keeps a dangerous charge after it is unplugged; lamps and tubes burn. Repeated flashes can harm people who are sensitive to them: warn everyone on set. The maker’s instructions and local codes come first, and wiring is work for a licensed electrician.',
    ),
  );
