import { at } from '../../exposure/core/at';

/** A text of JSON, with the colon where it is a name; and where an object begins and ends. */
const TOKEN = /("(?:[^"\\]|\\.)*")(\s*:)?|[{}]/g;

/**
 * A name that stands twice in one object of a JSON text: whoever parses it keeps the last of the two, and the other is gone without a
 * word (RFC 8259, section 4, leaves open what becomes of it).
 *
 * @param text - what has been parsed without a fault.
 */
export function nameTwice(text: string): string | undefined {
  const open: Set<string>[] = [];
  for (const [token, quoted, colon] of text.matchAll(TOKEN)) {
    if (token === '{') open.push(new Set());
    else if (token === '}') open.pop();
    else if (quoted !== undefined && colon !== undefined) {
      const name = String(JSON.parse(quoted));
      const names = at(open, open.length - 1);
      if (names.has(name)) return name;
      names.add(name);
    }
  }
  return undefined;
}
