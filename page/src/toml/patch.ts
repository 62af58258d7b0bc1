// Edits of a TOML text that leave every other byte as it is: comments, order, spelling of numbers, line ends.
import { parse } from 'smol-toml';
import { samePath, scan, startsWith, type Box, type Path, type Places, type Statement, type Table } from './scan';

/** A scalar as a TOML token. */
export function token(value: string | number | boolean): string {
  if (typeof value !== 'string') return String(value);
  const escaped = value.replace(/[\\"]/g, '\\$&').replace(/[\u0000-\u001f\u007f]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);
  return `"${escaped}"`;
}

/** A key as TOML writes it: bare where it may be. */
const keyToken = (name: string): string => (/^[A-Za-z0-9_-]+$/.test(name) ? name : token(name));

export interface Edit {
  path: Path;
  value: string | number | boolean | null; // null takes the key away
}

interface Splice {
  from: number;
  to: number;
  text: string;
}

/** An edit that this patcher will not make; the text stays as it was. */
export class Unpatchable extends Error {}

const newlineOf = (text: string): string => (/\r\n/.test(text) ? '\r\n' : '\n');

/** Each value in its place; keys that are not there yet go to the end of their table. */
export function setValues(text: string, edits: Edit[]): string {
  const places = scan(text);
  const splices: Splice[] = [];
  const fresh = new Map<string, { path: Path; lines: [string, string][] }>();
  for (const edit of edits) {
    const found = places.statements.find((one) => samePath(one.path, edit.path));
    if (found) splices.push(edit.value === null ? removal(text, found, places) : { from: found.valueStart, to: found.valueEnd, text: token(edit.value) });
    else if (edit.value !== null) {
      const table = edit.path.slice(0, -1);
      const id = JSON.stringify(table);
      const group = fresh.get(id) ?? { path: table, lines: [] };
      group.lines.push([String(edit.path[edit.path.length - 1]), token(edit.value)]);
      fresh.set(id, group);
    }
  }
  for (const { path, lines } of fresh.values()) splices.push(insertion(text, places, path, lines));
  return apply(text, splices);
}

export const setValue = (text: string, path: Path, value: Edit['value']): string => setValues(text, [{ path, value }]);

function removal(text: string, found: Statement, places: Places): Splice {
  if (found.inline) {
    const box = places.boxes.find((one) => !one.list && one.items.some((item) => item.start === found.start));
    if (!box) throw new Unpatchable('no brackets around an inline value');
    return itemRemoval(text, box, box.items.findIndex((item) => item.start === found.start));
  }
  const comment = /^[ \t]*(#[^\r\n]*)/.exec(text.slice(found.valueEnd, found.end));
  // A comment behind the value may say something to people: it stays on a line of its own.
  if (comment) return { from: found.start, to: found.valueEnd + comment[0].length, text: comment[1]! };
  const from = text.lastIndexOf('\n', found.start - 1) + 1;
  return { from, to: found.end, text: '' };
}

function insertion(text: string, places: Places, path: Path, lines: [string, string][]): Splice {
  const box = places.boxes.find((one) => !one.list && samePath(one.path, path));
  if (box) {
    const words = lines.map(([key, value]) => `${keyToken(key)} = ${value}`).join(', ');
    const last = box.items[box.items.length - 1];
    return last ? { from: last.end, to: last.end, text: ', ' + words } : { from: box.open + 1, to: box.close, text: ` ${words} ` };
  }
  const eol = newlineOf(text);
  const body = lines.map(([key, value]) => `${keyToken(key)} = ${value}${eol}`).join('');
  const table = places.tables.find((one) => samePath(one.path, path));
  if (table) {
    const at = path.length === 0 && table.end === 0 ? afterOpeningComments(text, places) : table.end;
    const gap = at > 0 && text[at - 1] !== '\n' ? eol : '';
    return { from: at, to: at, text: gap + body };
  }
  if (path.some((part) => typeof part === 'number') && !listed(places, path)) throw new Unpatchable('no such row to write into');
  return append(text, places, path, header(path, false, eol) + body);
}

/** Top-level keys must stand before the first header, behind the comments that open the file. */
function afterOpeningComments(text: string, places: Places): number {
  const first = places.tables[1]?.start ?? text.length;
  const opening = /^(?:[ \t]*#[^\n]*\n)*/.exec(text)?.[0].length ?? 0;
  return Math.min(first, opening);
}

const listed = (places: Places, path: Path): boolean => places.tables.some((one) => one.list && startsWith(path, one.path));
const names = (path: Path): string => path.filter((part) => typeof part === 'string').map((part) => keyToken(part as string)).join('.');
const header = (path: Path, list: boolean, eol: string): string => (list ? `[[${names(path)}]]${eol}` : `[${names(path)}]${eol}`);

/** A new table: behind the last table of its parent when it has one in a list, else at the end of the text. */
function append(text: string, places: Places, path: Path, block: string): Splice {
  const row = path.map((part) => typeof part === 'number').lastIndexOf(true);
  const parent = row < 0 ? [] : path.slice(0, row + 1);
  const inside = parent.length > 0 ? places.tables.filter((one) => startsWith(one.path, parent)) : [];
  const at = inside.length > 0 ? inside[inside.length - 1]!.end : text.length;
  return spaced(text, at, block);
}

/** A block with an empty line before it, and behind it when something follows at once. */
function spaced(text: string, at: number, block: string): Splice {
  const eol = newlineOf(text);
  const before = at === 0 ? '' : (text[at - 1] === '\n' ? '' : eol) + (at >= 2 && /\n\r?\n$/.test(text.slice(0, at)) ? '' : eol);
  const after = at < text.length && !/^[ \t]*\r?\n/.test(text.slice(at)) ? eol : '';
  return { from: at, to: at, text: before + block + after };
}

function apply(text: string, splices: Splice[]): string {
  let out = text;
  for (const splice of [...splices].sort((a, b) => b.from - a.from || b.to - a.to)) {
    out = out.slice(0, splice.from) + splice.text + out.slice(splice.to);
  }
  return out;
}

export type Row = Record<string, string | number | boolean>;

const inlineRow = (row: Row): string => `{ ${Object.entries(row).map(([key, value]) => `${keyToken(key)} = ${token(value)}`).join(', ')} }`;

/** New rows at the end of a list, written as its other rows are: `[[job]]` blocks, or items in brackets. */
export function addRows(text: string, list: Path, rows: Row[], inline = false): string {
  if (rows.length === 0) return text;
  const places = scan(text);
  const box = places.boxes.find((one) => one.list && samePath(one.path, list));
  if (box) return apply(text, [itemAddition(text, box, rows)]);
  if (inline) {
    const value = `[${rows.map(inlineRow).join(', ')}]`;
    return apply(text, [insertion(text, places, list.slice(0, -1), [[String(list[list.length - 1]), value]])]);
  }
  const eol = newlineOf(text);
  const blocks = rows.map((row) => header([...list, 0], true, eol) + Object.entries(row).map(([key, value]) => `${keyToken(key)} = ${token(value)}${eol}`).join(''));
  const block = blocks.join(eol);
  const last = lastOf(places, list);
  return apply(text, [last === null ? append(text, places, list, block) : spaced(text, last, block)]);
}

/** Where the last row of a list ends, with the tables that belong to it; null when there is none. */
function lastOf(places: Places, list: Path): number | null {
  const inside = places.tables.filter((one) => one.path.length > list.length && startsWith(one.path, list));
  return inside.length === 0 ? null : inside[inside.length - 1]!.end;
}

function itemAddition(text: string, box: Box, rows: Row[]): Splice {
  const last = box.items[box.items.length - 1];
  if (!last) return { from: box.open + 1, to: box.close, text: rows.map(inlineRow).join(', ') };
  const lineStart = text.lastIndexOf('\n', last.start - 1) + 1;
  const indent = text.slice(lineStart, last.start);
  const ownLine = lineStart > box.open && /^[ \t]*$/.test(indent);
  const joiner = ownLine ? ',' + newlineOf(text) + indent : ', ';
  return { from: last.end, to: last.end, text: rows.map((row) => joiner + inlineRow(row)).join('') };
}

function itemRemoval(text: string, box: Box, index: number): Splice {
  const item = box.items[index];
  if (!item) throw new Unpatchable('no such item');
  const next = box.items[index + 1];
  const before = box.items[index - 1];
  if (next) return { from: item.start, to: next.start, text: '' };
  if (before) return { from: before.end, to: item.end, text: '' };
  return { from: item.start, to: item.end + (/^\s*,/.exec(text.slice(item.end))?.[0].length ?? 0), text: '' };
}

/** The table of a row and every table below it, in the text's order. */
function rowTables(places: Places, row: Path): Table[] {
  return places.tables.filter((one) => startsWith(one.path, row));
}

export function removeRow(text: string, row: Path): string {
  const places = scan(text);
  const box = places.boxes.find((one) => one.list && samePath(one.path, row.slice(0, -1)));
  if (box) return apply(text, [itemRemoval(text, box, Number(row[row.length - 1]))]);
  const tables = rowTables(places, row);
  if (tables.length === 0) throw new Unpatchable('no such row');
  return apply(text, tables.map((table, i) => ({ from: table.start, to: blockEnd(text, table, tables[i + 1]), text: '' })));
}

/** End of a table with the comments between it and the next table of the same row, and one empty line behind. */
function blockEnd(text: string, table: Table, next: Table | undefined): number {
  if (next && /^\s*(?:#[^\n]*\s*)*$/.test(text.slice(table.end, next.start))) return next.start;
  return table.end + (/^[ \t]*\r?\n/.exec(text.slice(table.end))?.[0].length ?? 0);
}

/** A copy of a row, with all that belongs to it, behind the last row of its list. */
export function copyRow(text: string, row: Path, name: string): string {
  const places = scan(text);
  const box = places.boxes.find((one) => one.list && samePath(one.path, row.slice(0, -1)));
  if (box) {
    const item = box.items[Number(row[row.length - 1])];
    const last = box.items[box.items.length - 1];
    if (!item || !last) throw new Unpatchable('no such item');
    return apply(text, [{ from: last.end, to: last.end, text: ', ' + text.slice(item.start, item.end) }]);
  }
  const tables = rowTables(places, row);
  if (tables.length === 0) throw new Unpatchable('no such row');
  const eol = newlineOf(text);
  const block = tables.map((table) => text.slice(table.start, table.end).replace(/\r?\n?$/, eol)).join(eol);
  const renamed = setFirst(block, name);
  const list = row.slice(0, -1);
  const at = lastOf(places, list);
  return apply(text, [spaced(text, at ?? text.length, renamed)]);
}

function setFirst(block: string, name: string): string {
  const found = scan(block).statements.find((one) => one.path[one.path.length - 1] === 'name');
  return found ? block.slice(0, found.valueStart) + token(name) + block.slice(found.valueEnd) : block;
}

/** What the text means, or why it is no TOML. */
export function read(text: string): { file: Record<string, unknown> } | { fault: string } {
  try {
    return { file: parse(text.replace(/^\ufeff/, '')) as Record<string, unknown> };
  } catch (error) {
    return { fault: (error as Error).message.split('\n')[0] ?? 'the text is no TOML' };
  }
}

/** Does an edit and makes sure that the text still parses. A file that cannot be edited safely is left alone. */
export function safely(text: string, edit: (text: string) => string): string {
  const after = edit(text);
  const result = read(after);
  if ('fault' in result) throw new Unpatchable(`This edit would break the file (${result.fault}). It was not made; edit the text itself.`);
  return after;
}
