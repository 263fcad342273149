import type { LeftOut } from './notKept';
import { isTrue, type XmlAttributes } from './xml';

const SAID = 'A look within the text of a cell, as one word in bold, is left out: the words stay.';
/** What even all of a text can have that its cell has not. */
const EMPHASIS: ReadonlySet<string> = new Set(['b', 'i', 'u', 'strike', 'vertAlign']);

/** Hears the elements of texts, and says where parts of one look otherwise than the rest: a cell here has one look. */
export class RunLooks {
  readonly #leftOut: LeftOut;
  readonly #looks = new Set<string>();
  #look: string | undefined;
  #isInLook = false;
  #isEmphatic = false;

  constructor(leftOut: LeftOut) {
    this.#leftOut = leftOut;
  }

  open(name: string, attributes: XmlAttributes): void {
    if (name === 'si' || name === 'is') {
      this.#looks.clear();
      this.#isEmphatic = false;
    } else if (name === 'r') this.#look = '';
    else if (name === 'rPr') this.#isInLook = true;
    else if (this.#isInLook) {
      this.#look = `${this.#look ?? ''}${name}${JSON.stringify(attributes)}`;
      this.#isEmphatic ||= EMPHASIS.has(name) && isTrue(attributes.val ?? '1');
    }
  }

  close(name: string): void {
    if (name === 'rPr') this.#isInLook = false;
    else if (name === 'r') this.#looks.add(this.#look ?? '');
    else if ((name === 'si' || name === 'is') && (this.#isEmphatic || this.#looks.size > 1))
      this.#leftOut.say(SAID);
  }
}
