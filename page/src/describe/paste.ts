// Cells of a spreadsheet, pasted. Pure: what becomes of them is decided here and done elsewhere.
import type { Field } from '../schema/fields';
import { titleOf } from '../schema/fields';
import { typed, unitIn } from './values';
import type { Row } from '../toml/patch';

export const mostCells = 200_000;
export const mostCharacters = 5_000_000;

/** Rows of cells: parted by tabs when there is one, else by commas or semicolons; quotes as spreadsheets write them. */
export function cellsOf(text: string, sign?: string): string[][] {
  const by = sign ?? (text.includes('\t') ? '\t' : /;/.test(text.split('\n')[0] ?? '') && !/,/.test(text.split('\n')[0] ?? '') ? ';' : ',');
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const endCell = () => {
    row.push(cell.trim());
    cell = '';
  };
  const endRow = () => {
    endCell();
    if (row.some((one) => one !== '')) rows.push(row);
    row = [];
  };
  for (let i = 0; i < text.length; ++i) {
    const c = text[i]!;
    if (quoted) {
      if (c === '"' && text[i + 1] === '"') cell += text[++i];
      else if (c === '"') quoted = false;
      else cell += c;
    } else if (c === '"' && cell.trim() === '') quoted = true;
    else if (c === by) endCell();
    else if (c === '\n') endRow();
    else if (c !== '\r') cell += c;
  }
  if (cell !== '' || row.length > 0) endRow();
  return rows;
}

/** The sign that parts the cells of a file: the one that most lines have, so that a title above the head does not count. */
export function signOf(text: string): string {
  const lines = text.split('\n', 200).map((one) => one.replace(/"[^"]*"/g, ''));
  const having = (sign: string) => lines.filter((one) => one.includes(sign)).length;
  return ['\t', ';', ','].reduce((best, sign) => (having(sign) > having(best) ? sign : best));
}

interface Column {
  field: Field | null; // null: not taken
  unit: string; // from the header
}

const plainName = (text: string): string => text.toLowerCase().replace(/[_\s]+/g, ' ').trim();

/** "Speed [m/min]", "speed (m/min)", "Speed, m/min" → name and unit. */
function headed(text: string): { name: string; unit: string } {
  const match = /^(.*?)\s*(?:\[([^\]]*)\]|\(([^)]*)\)|,\s*(.+))\s*$/.exec(text);
  return match ? { name: plainName(match[1] ?? ''), unit: (match[2] ?? match[3] ?? match[4] ?? '').trim() } : { name: plainName(text), unit: '' };
}

function headerColumns(cells: string[], fields: readonly Field[]): Column[] | null {
  const columns = cells.map((cell) => {
    const { name, unit } = headed(cell);
    return { field: fields.find((one) => one.key === name || titleOf(one.key) === name) ?? null, unit };
  });
  const found = columns.filter((one) => one.field).length;
  return found >= 2 || (found === 1 && cells.length === 1) ? columns : null;
}

export interface Pasted {
  rows: Row[];
  withHeader: boolean;
  left: string[]; // headers that mean nothing here
  lent: { column: string; unit: string; count: number }[]; // units that bare numbers were given, and whence
}

/**
 * What pasted cells mean, from column `at` of `fields` on. Bare numbers of a quantity take the unit of the header, else
 * that of `units` (the row above); what they took is told. Too large: null.
 */
export function pasted(text: string, fields: readonly Field[], at: number, units: (key: string) => string): Pasted | null {
  if (text.length > mostCharacters) return null;
  const cells = cellsOf(text);
  if (cells.reduce((sum, row) => sum + row.length, 0) > mostCells) return null;
  const header = headerColumns(cells[0] ?? [], fields);
  const columns: Column[] = header ?? fields.slice(at).map((field) => ({ field, unit: '' }));
  const lent = new Map<string, { column: string; unit: string; count: number }>();
  const rows = cells.slice(header ? 1 : 0).map((row) => rowOf(row, columns, units, lent));
  const left = header ? (cells[0] ?? []).filter((_, i) => !columns[i]?.field) : [];
  return { rows, withHeader: header !== null, left, lent: [...lent.values()] };
}

function rowOf(cells: string[], columns: Column[], units: (key: string) => string, lent: Map<string, { column: string; unit: string; count: number }>): Row {
  const row: Row = {};
  cells.forEach((cell, i) => {
    const column = columns[i];
    if (!column?.field || cell === '') return;
    const { field } = column;
    const value = typed(field, withUnit(cell));
    if (value !== null) row[field.key] = value;

    function withUnit(written: string): string {
      const bare = /^[-+]?[\d.]+(?:e[-+]?\d+)?$/i.test(written);
      if (!bare || field.kind === '' || ['number', 'count', 'price', 'ratio'].includes(field.kind)) return column?.unit === '%' && bare ? `${written} %` : written;
      const unit = column?.unit || units(field.key);
      if (unit === '') return written;
      if (!column?.unit) {
        const told = lent.get(field.key) ?? { column: field.title, unit, count: 0 };
        told.count += 1;
        lent.set(field.key, told);
      }
      return `${written} ${unit}`;
    }
  });
  return row;
}

/** The unit that the last row with one uses in a column. */
export function unitAbove(rows: readonly Record<string, unknown>[], key: string): string {
  for (let i = rows.length - 1; i >= 0; --i) {
    const value = rows[i]?.[key];
    if (typeof value === 'string' && unitIn(value) !== '') return unitIn(value);
  }
  return '';
}
