import { SaxParser } from '@cj-tech-master/excelts/xml';
import { DAMAGED, UnreadableFile, TOO_LARGE } from './refused';
import type { Package } from './zip';

export type XmlAttributes = Readonly<Record<string, string>>;
export interface Handlers {
  open(name: string, attributes: XmlAttributes): void;
  text(text: string): void;
  close(name: string): void;
}

/** An element's or attribute's name without the prefix that some programs write. */
const local = (name: string): string => name.slice(name.indexOf(':') + 1);
const CHUNK = 1_000_000;
/** Letters of comments, and instructions: they say nothing to us, and are slow to pass. */
const MOST_COMMENTS = 1_000_000;
const MOST_INSTRUCTIONS = 10;
/** A tree takes far more memory than its text, so the elements of all parts of a file are counted together. */
const MOST_NODES = 1_000_000;

function plain(attributes: XmlAttributes): XmlAttributes {
  const names = Object.keys(attributes);
  if (!names.some((name) => name.includes(':'))) return attributes;
  return Object.fromEntries(
    names.map((name) => [name.startsWith('xmlns') ? name : local(name), attributes[name]]),
  ) as XmlAttributes;
}

/** Goes through the elements of a part. Declarations of entities, which can blow up, are refused. */
export function scan(bytes: Uint8Array, handlers: Handlers): void {
  const parser = new SaxParser({ position: false, invalidCharHandling: 'replace' });
  const fail = (): never => {
    throw new UnreadableFile(DAMAGED);
  };
  parser.on('error', fail);
  let hasElement = false;
  let comments = 0;
  let instructions = 0;
  parser.on('opentag', ({ name, attributes }) => {
    hasElement = true;
    handlers.open(local(name), plain(attributes));
  });
  parser.on('comment', (text) => {
    comments += text.length;
    if (comments > MOST_COMMENTS) fail();
  });
  parser.on('text', (text) => handlers.text(text));
  parser.on('cdata', (text) => handlers.text(text));
  parser.on('closetag', ({ name }) => handlers.close(local(name)));
  const decoder = new TextDecoder('utf-8');
  let ended = '';
  for (let at = 0; at < bytes.length; at += CHUNK) {
    const more = decoder.decode(bytes.subarray(at, at + CHUNK), { stream: true });
    if (/<!(?:DOCTYPE|ENTITY)/i.test(ended + more)) fail();
    instructions += more.match(/<\?/g)?.length ?? 0;
    if (instructions > MOST_INSTRUCTIONS) fail();
    hasElement = false;
    parser.write(more);
    // No sheet says anything this long.
    if (!hasElement && more.length >= CHUNK / 2) fail();
    ended = more.slice(-10);
  }
  parser.close();
}

export interface XmlNode {
  readonly name: string;
  readonly attributes: XmlAttributes;
  readonly children: XmlNode[];
  text: string;
}

/** A small part as a tree; its root. Undefined where there is no such part. */
export async function treeOf(file: Package, part: string | undefined): Promise<XmlNode | undefined> {
  const bytes = part === undefined ? undefined : await file.read(part);
  if (!bytes) return undefined;
  const top: XmlNode = { name: '', attributes: {}, children: [], text: '' };
  const above: XmlNode[] = [];
  let here = top;
  scan(bytes, {
    open(name, attributes) {
      if (++file.nodes > MOST_NODES)
        throw new UnreadableFile(TOO_LARGE('one of its parts is beyond all measure'));
      const node: XmlNode = { name, attributes, children: [], text: '' };
      here.children.push(node);
      above.push(here);
      here = node;
    },
    text(more) {
      here.text += more;
    },
    close() {
      here = above.pop() ?? top;
    },
  });
  return top.children[0] ?? top;
}

export const child = (node: XmlNode | undefined, name: string): XmlNode | undefined =>
  node?.children.find((c) => c.name === name);
export const children = (node: XmlNode | undefined, name: string): XmlNode[] =>
  node?.children.filter((c) => c.name === name) ?? [];
/** All elements of a name below a node, however deep. */
export const below = (node: XmlNode | undefined, name: string): XmlNode[] =>
  node?.children.flatMap((c) => [...(c.name === name ? [c] : []), ...below(c, name)]) ?? [];
/** All text within a node. */
export const words = (node: XmlNode | undefined): string =>
  node === undefined ? '' : node.text + node.children.map(words).join('');
export const isTrue = (value: string | undefined): boolean => value === '1' || value === 'true';
