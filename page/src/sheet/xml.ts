// XML of workbooks, read once from front to end. No document is built, so that a sheet of any size takes little memory;
// document types are passed over, and no entity of theirs is ever expanded.
import { Unreadable, workbookWanted } from './zip';

export const mostTags = 8_000_000; // of a part: each takes time, however short

export type Attributes = ReadonlyMap<string, string>;

/** What a reader hears. `path` holds the names of the open elements without their prefixes, the innermost last. */
export interface Listener {
  open?(path: readonly string[], attributes: Attributes): void;
  text?(path: readonly string[], text: string): void;
  close?(path: readonly string[]): void;
}

/** The name without its prefix: what stands behind it counts. */
const localName = (name: string): string => name.slice(name.lastIndexOf(':') + 1);

/** An attribute by its name without prefix, or with one ("r:id"). */
export function attribute(attributes: Attributes, name: string, prefixed = false): string {
  for (const [key, value] of attributes) if (localName(key) === name && key.length > name.length === prefixed) return value;
  return '';
}

/** UTF-8, unless a mark or the declaration says another. Bytes that are no text read as U+FFFD. */
export function decoded(bytes: Uint8Array): string {
  const [a, b] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0x3c && b === 0)) return new TextDecoder('utf-16le').decode(bytes);
  if ((a === 0xfe && b === 0xff) || (a === 0 && b === 0x3c)) return new TextDecoder('utf-16be').decode(bytes);
  const head = String.fromCharCode(...bytes.subarray(0, 100));
  const latin = /^<\?xml[^>]*encoding=["'](?:iso-8859-1|latin1)["']/i.test(head);
  return new TextDecoder(latin ? 'latin1' : 'utf-8').decode(bytes);
}

const named: Record<string, string> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

/** The five entities of XML and numbers of characters; any other stays as it is written. */
function withoutEntities(text: string): string {
  if (!text.includes('&')) return text;
  return text.replace(/&(?:#x([0-9a-fA-F]{1,6})|#([0-9]{1,7})|(lt|gt|amp|quot|apos));/g, (all, hex: string | undefined, number: string | undefined, name: string | undefined) => {
    if (name !== undefined) return named[name]!;
    const code = hex !== undefined ? parseInt(hex, 16) : Number(number);
    return code > 0 && code <= 0x10ffff && !(code >= 0xd800 && code < 0xe000) ? String.fromCodePoint(code) : all;
  });
}

const oneLineEnd = (text: string): string => (text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text);

/** Tells `listener` of every element and text. Throws Unreadable where the text is no XML. */
export function readXml(text: string, part: string, listener: Listener): void {
  new Reader(text, part, listener).read();
}

class Reader {
  private at: number;
  private tags = 0;
  private seen = false; // the root
  private readonly path: string[] = [];
  private readonly full: string[] = []; // with prefixes, to match ends

  constructor(private readonly source: string, private readonly part: string, private readonly listener: Listener) {
    this.at = source.charCodeAt(0) === 0xfeff ? 1 : 0;
  }

  read(): void {
    const { source } = this;
    while (this.at < source.length) {
      const next = source.indexOf('<', this.at);
      this.textTo(next < 0 ? source.length : next);
      if (next < 0) break;
      this.at = next;
      this.tag();
    }
    if (!this.seen || this.path.length > 0) this.broken('the document ends too early');
  }

  private broken(what: string): never {
    throw new Unreadable(`part ${this.part} is not well formed: ${what} at character ${this.at}`, workbookWanted);
  }

  private textTo(end: number): void {
    if (end > this.at && this.path.length > 0) {
      const text = oneLineEnd(this.source.slice(this.at, end));
      this.listener.text?.(this.path, withoutEntities(text));
    }
    this.at = end;
  }

  private tag(): void {
    const { source, at } = this;
    const c = source[at + 1];
    if (c === '?') return this.over('?>');
    if (source.startsWith('<!--', at)) return this.over('-->');
    if (source.startsWith('<![CDATA[', at)) return this.verbatim();
    if (c === '!') return this.documentType();
    if (++this.tags > mostTags) throw new Unreadable(`part ${this.part} has more than ${mostTags / 1e6} million tags`, 'a workbook with the jobs alone');
    return c === '/' ? this.end() : this.begin();
  }

  private over(mark: string): void {
    const end = this.source.indexOf(mark, this.at + 2);
    if (end < 0) this.broken('something is not closed');
    this.at = end + mark.length;
  }

  private verbatim(): void {
    const end = this.source.indexOf(']]>', this.at);
    if (end < 0 || this.path.length === 0) this.broken('a text is out of place');
    this.listener.text?.(this.path, oneLineEnd(this.source.slice(this.at + 9, end)));
    this.at = end + 3;
  }

  private documentType(): void {
    let [depth, at] = [0, this.at + 1];
    for (; at < this.source.length; ++at) {
      const c = this.source[at];
      if (c === '[' || c === '<') ++depth;
      if (c === ']') --depth;
      if (c === '>' && --depth < 0) break;
    }
    if (at >= this.source.length) this.broken('a document type is not closed');
    this.at = at + 1;
  }

  private end(): void {
    const close = this.source.indexOf('>', this.at);
    const name = close < 0 ? '' : this.source.slice(this.at + 2, close).trimEnd();
    if (name === '' || this.full.pop() !== name) this.broken('an end without its beginning');
    this.listener.close?.(this.path);
    this.path.pop();
    this.at = close + 1;
  }

  private begin(): void {
    const { source } = this;
    name.lastIndex = this.at + 1;
    const found = name.exec(source);
    if (!found || (this.seen && this.path.length === 0)) this.broken('a tag is out of place');
    this.seen = true;
    this.at = name.lastIndex;
    const attributes = this.attributes();
    const empty = source[this.at] === '/';
    if (source[this.at + (empty ? 1 : 0)] !== '>') this.broken('a tag is not closed');
    this.at += empty ? 2 : 1;
    this.path.push(localName(found[0]));
    this.listener.open?.(this.path, attributes);
    if (!empty) return void this.full.push(found[0]);
    this.listener.close?.(this.path);
    this.path.pop();
  }

  private attributes(): Attributes {
    if (this.source[this.at] === '>') return none;
    const found = new Map<string, string>();
    for (;;) {
      pair.lastIndex = this.at;
      const one = pair.exec(this.source);
      if (!one) break;
      const value = one[2] ?? one[3] ?? '';
      if (!found.has(one[1]!)) found.set(one[1]!, withoutEntities(value.replace(/\s/g, ' ')));
      this.at = pair.lastIndex;
    }
    blanks.lastIndex = this.at;
    blanks.exec(this.source);
    this.at = blanks.lastIndex;
    return found;
  }
}

const none: Attributes = new Map();
const name = /[^\s/>=<"'&!?][^\s/>=<"'&]*/y;
const pair = /\s+([^\s/>=<"'&]+)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/y;
const blanks = /\s*/y;
