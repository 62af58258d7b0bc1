// Where each key and value of a TOML text stands. The parser from npm says what the text means; this says where, so that
// an edit changes the bytes of one value and no others. It trusts the parser for what is an error: of a text that does
// not parse the places mean nothing.

export type Path = (string | number)[];

/** `key = value`: in a table on lines of its own, or inside an inline table. */
export interface Statement {
  path: Path;
  start: number; // of the key
  valueStart: number;
  valueEnd: number;
  end: number; // past the line break; in an inline table past the value
  inline: boolean;
}

/** `[a.b]` or `[[a.b]]` with the statements up to the next header. The text's beginning counts as a table of no name. */
export interface Table {
  path: Path;
  list: boolean;
  start: number; // of the line
  headerEnd: number; // past the line break
  end: number; // past the last statement's line; comments behind it belong to nobody
}

/** An inline array or table, from bracket to bracket. */
export interface Box {
  path: Path;
  open: number;
  close: number; // of the closing bracket
  list: boolean;
  items: { start: number; end: number }[];
}

export interface Places {
  statements: Statement[];
  tables: Table[];
  boxes: Box[];
}

class Scanner {
  at = 0;
  readonly places: Places = { statements: [], tables: [], boxes: [] };
  /** How many items each list of tables has so far, by its path with indices. */
  private readonly counts = new Map<string, number>();

  constructor(readonly text: string) {}

  run(): Places {
    this.places.tables.push({ path: [], list: false, start: 0, headerEnd: 0, end: 0 });
    while (this.at < this.text.length) {
      this.blank(true);
      if (this.at >= this.text.length) break;
      if (this.text[this.at] === '[') this.header();
      else this.line();
    }
    return this.places;
  }

  private header(): void {
    const start = this.lineStart(this.at);
    const list = this.text[this.at + 1] === '[';
    this.at += list ? 2 : 1;
    const path = this.resolve(this.key(), list);
    while (this.at < this.text.length && this.text[this.at] !== ']') this.at += 1;
    this.at += list ? 2 : 1;
    this.restOfLine();
    this.places.tables.push({ path, list, start, headerEnd: this.at, end: this.at });
  }

  /** Names of a header become a path with indices: the last item of each list on the way. */
  private resolve(names: string[], list: boolean): Path {
    const path: Path = [];
    names.forEach((name, i) => {
      path.push(name);
      const id = JSON.stringify(path);
      const count = this.counts.get(id);
      if (i === names.length - 1 && list) {
        this.counts.set(id, (count ?? 0) + 1);
        path.push(count ?? 0);
      } else if (count !== undefined) {
        path.push(count - 1);
      }
    });
    return path;
  }

  private line(): void {
    const table = this.places.tables[this.places.tables.length - 1]!;
    const before = this.at;
    this.statement(table.path, false);
    this.restOfLine();
    table.end = this.at;
    if (this.at === before) this.at += 1; // a text that is no TOML still comes to its end
  }

  private statement(base: Path, inline: boolean): void {
    const start = this.at;
    const names = this.key();
    this.blank(false);
    if (this.text[this.at] === '=') this.at += 1;
    this.blank(false);
    const path = [...base, ...names];
    const statement: Statement = { path, start, valueStart: this.at, valueEnd: this.at, end: this.at, inline };
    this.places.statements.push(statement);
    this.value(path);
    statement.valueEnd = this.at;
    statement.end = this.at;
    if (!inline) {
      const mark = this.at;
      this.restOfLine();
      statement.end = this.at;
      this.at = mark;
    }
  }

  private key(): string[] {
    const names: string[] = [];
    for (;;) {
      this.blank(false);
      const c = this.text[this.at];
      if (c === '"' || c === "'") {
        const from = this.at;
        this.string();
        names.push(c === "'" ? this.text.slice(from + 1, this.at - 1) : unescape(this.text.slice(from, this.at)));
      } else {
        const from = this.at;
        while (/[A-Za-z0-9_-]/.test(this.text[this.at] ?? '')) this.at += 1;
        names.push(this.text.slice(from, this.at));
      }
      this.blank(false);
      if (this.text[this.at] !== '.') return names;
      this.at += 1;
    }
  }

  private value(path: Path): void {
    const c = this.text[this.at];
    if (c === '"' || c === "'") return this.string();
    if (c === '[') return this.box(path, true);
    if (c === '{') return this.box(path, false);
    while (this.at < this.text.length && !/[,\]}#\r\n]/.test(this.text[this.at]!)) this.at += 1;
    while (/[ \t]/.test(this.text[this.at - 1] ?? '')) this.at -= 1;
  }

  private box(path: Path, list: boolean): void {
    const box: Box = { path, open: this.at, close: this.at, list, items: [] };
    this.places.boxes.push(box);
    this.at += 1;
    while (this.at < this.text.length) {
      this.blank(true);
      const c = this.text[this.at];
      if (c === ']' || c === '}' || c === undefined) break;
      if (c === ',') {
        this.at += 1;
        continue;
      }
      const start = this.at;
      if (list) this.value([...path, box.items.length]);
      else this.statement(path, true);
      if (this.at === start) this.at += 1;
      box.items.push({ start, end: this.at });
    }
    box.close = this.at;
    this.at += 1;
  }

  private string(): void {
    const quote = this.text[this.at]!;
    const long = this.text.startsWith(quote.repeat(3), this.at);
    const end = long ? quote.repeat(3) : quote;
    this.at += end.length;
    while (this.at < this.text.length && !this.text.startsWith(end, this.at)) {
      this.at += quote === '"' && this.text[this.at] === '\\' ? 2 : 1;
    }
    this.at += end.length;
    // Up to two more quotes may end a long string.
    if (long) while (this.text[this.at] === quote) this.at += 1;
  }

  /** Blanks and, if `lines`, line breaks and comments. */
  private blank(lines: boolean): void {
    for (;;) {
      const c = this.text[this.at];
      if (c === ' ' || c === '\t' || c === '\ufeff') this.at += 1;
      else if (lines && (c === '\n' || c === '\r')) this.at += 1;
      else if (lines && c === '#') this.toLineEnd();
      else return;
    }
  }

  private toLineEnd(): void {
    while (this.at < this.text.length && this.text[this.at] !== '\n') this.at += 1;
  }

  private restOfLine(): void {
    this.toLineEnd();
    if (this.at < this.text.length) this.at += 1;
  }

  private lineStart(at: number): number {
    return this.text.lastIndexOf('\n', at - 1) + 1;
  }
}

function unescape(quoted: string): string {
  try {
    return JSON.parse(quoted) as string;
  } catch {
    return quoted.slice(1, -1); // \U and \e are TOML's own; no key of a stand file has them
  }
}

export const scan = (text: string): Places => new Scanner(text).run();

export const samePath = (a: Path, b: Path): boolean => a.length === b.length && a.every((part, i) => part === b[i]);
export const startsWith = (path: Path, head: Path): boolean => head.length <= path.length && head.every((part, i) => part === path[i]);
