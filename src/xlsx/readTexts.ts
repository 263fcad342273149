import type { LeftOut } from './notKept';
import { RunLooks } from './runLooks';
import { scan } from './xml';

/** Signs that a file spells as _x000D_ and the like. */
export const unescaped = (text: string): string =>
  text.replace(/_x([\da-f]{4})_/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

/** The texts that cells of all sheets share, by number. */
export function readTexts(bytes: Uint8Array | undefined, leftOut: LeftOut): readonly string[] {
  const found: string[] = [];
  if (!bytes) return found;
  let text = '';
  let within = false;
  let isReading = false;
  const looks = new RunLooks(leftOut);
  scan(bytes, {
    open(name, attributes) {
      looks.open(name, attributes);
      if (name === 'si') text = '';
      if (name === 'rPh') isReading = true;
      if (name === 't') within = !isReading;
    },
    text(more) {
      if (within) text += more;
    },
    close(name) {
      looks.close(name);
      if (name === 't') within = false;
      if (name === 'rPh') isReading = false;
      if (name === 'si') found.push(unescaped(text));
    },
  });
  return found;
}
