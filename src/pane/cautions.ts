import { h } from './element';
import { isKept, keep } from './kept';

const SEEN = 'sweeptable.cautions';

/** What can hurt somebody, one press away ever after it was seen. */
export interface Cautions {
  readonly element: HTMLElement;
  /** Leaves the room to what is being done; only once, and only where somebody has had them in sight. */
  readonly fold: () => void;
}

/** Tells once that all of an element is in sight. */
function whenSeen(element: HTMLElement, seen: () => void): void {
  const observer = new IntersectionObserver(
    (entries) => {
      if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
      observer.disconnect();
      seen();
    },
    { threshold: 0.99 },
  );
  observer.observe(element);
}

/** The cautions, unfolded until they were in sight. */
export function cautions(): Cautions {
  let isSeen = isKept(SEEN);
  let isFolded = isSeen;
  const words = h(
    'p',
    {},
    'Flash equipment runs on mains current and keeps a dangerous charge after it is unplugged; lamps and tubes burn. Repeated flashes can harm people who are sensitive to them: warn everyone on set. The maker’s instructions and local codes come first, and wiring is work for a licensed electrician.',
  );
  const element = h(
    'details',
    { class: 'care', ...(isSeen ? {} : { open: true }) },
    h(
      'summary',
      {},
      h('h2', {}, 'Take care', h('span', { class: 'holds' }, ': charge, heat, flashes, wiring')),
    ),
    words,
  );
  if (!isSeen)
    whenSeen(words, () => {
      isSeen = true;
      keep(SEEN);
    });
  return {
    element,
    fold() {
      if (isFolded || !isSeen) return;
      isFolded = true;
      element.open = false;
    },
  };
}
