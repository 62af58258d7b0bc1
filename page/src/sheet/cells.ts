// One worksheet as CSV, by the rules of the command line: one line for each row of the sheet, so that row and column of a
// cell stay what they are there. Numbers keep all their digits, those shown in per cent have "%" behind them, formulas
// give their stored value, and dates stay serial numbers.
import { attribute, readXml, type Attributes, type Listener } from './xml';
import { Unreadable, workbookWanted } from './zip';

export const mostRows = 100_000;
export const mostColumns = 256;
const mostText = 64_000_000; // characters of the sheet as CSV
const jobsAlone = 'the jobs alone, on a sheet of their own';

/** What cells refer to: texts by number, and the styles that show per cent. */
export interface Shared {
  texts: readonly string[] | null; // null: the workbook has none
  perCent: ReadonlySet<number>;
}

// --- texts ----------------------------------------------------------------------------------------------------------

const space = '[ \\t-\\r\\u00a0\\u2009\\u202f]';
const ends = new RegExp(`^${space}+|${space}+$`, 'g');

/** Without control characters but line ends, and without blanks at its ends. */
export function clean(text: string): string {
  // eslint-disable-next-line no-control-regex
  return text.replace(/\r/g, '').replace(/[\u0000-\u0009\u000b-\u001f]/g, ' ').replace(ends, '');
}

/** Sheets write characters that XML does not take as "_x000D_". */
export function withoutEscapes(text: string): string {
  if (!text.includes('_x')) return text;
  return text.replace(/_x([0-9a-fA-F]{4})_/g, (_, digits: string) => {
    const code = parseInt(digits, 16);
    return code >= 0xd800 && code < 0xe000 ? '\ufffd' : String.fromCharCode(code); // half of a pair is no character
  });
}

/** A number format that shows per cent: a "%" outside quotes, not escaped. */
export function showsPerCent(code: string): boolean {
  let quoted = false;
  for (let i = 0; i < code.length; ++i) {
    if (code[i] === '"') quoted = !quoted;
    if (code[i] === '\\') ++i;
    else if (code[i] === '%' && !quoted) return true;
  }
  return false;
}

// --- numbers --------------------------------------------------------------------------------------------------------

/** Digits and exponent as the command line writes them: plain from 1e-4 to 1e`most`, else as "1e-05". */
function written(digits: string, exponent: number, negative: boolean, most: number): string {
  const sign = negative ? '-' : '';
  if (exponent < -4 || exponent >= most) {
    const size = String(Math.abs(exponent)).padStart(2, '0');
    return `${sign}${digits[0]}${digits.length > 1 ? '.' + digits.slice(1) : ''}e${exponent < 0 ? '-' : '+'}${size}`;
  }
  if (exponent < 0) return `${sign}0.${'0'.repeat(-exponent - 1)}${digits}`;
  const before = digits.slice(0, exponent + 1).padEnd(exponent + 1, '0');
  const after = digits.slice(exponent + 1);
  return sign + before + (after === '' ? '' : `.${after}`);
}

function parted(text: string): { digits: string; exponent: number } {
  const [mantissa, exponent] = text.split('e');
  return { digits: mantissa!.replace(/[-.]/g, '').replace(/(?!^)0+$/, ''), exponent: Number(exponent) };
}

/** The fewest digits that are the number again. */
export function shortest(value: number): string {
  if (value === 0) return Object.is(value, -0) ? '-0' : '0';
  const { digits, exponent } = parted(value.toExponential());
  return written(digits, exponent, value < 0, 16);
}

/** The shortest text that is a hundredth of itself again: 0.07 → "7 %". */
export function inPerCent(value: number): string {
  for (let precision = 1; precision <= 17; ++precision) {
    const text = (value * 100).toExponential(precision - 1);
    if (value !== 0 && Number(text) / 100 !== value) continue;
    const { digits, exponent } = parted(text);
    return `${value === 0 ? '0' : written(digits, exponent, value < 0, precision)} %`;
  }
  return `${shortest(value * 100)} %`;
}

const number = /^-?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][-+]?[0-9]+)?$/;

function numberText(stored: string, perCent: boolean): string {
  const value = number.test(stored) ? Number(stored) : NaN;
  const lost = value === 0 && /[1-9]/.test(stored.replace(/[eE].*/, '')); // too small for a number
  if (!Number.isFinite(value) || lost) return clean(stored);
  return perCent ? inPerCent(value) : shortest(value);
}

// --- cells ----------------------------------------------------------------------------------------------------------

/** "B7" → row 7, column 2; null when it is no cell. */
export function placeOf(name: string): { row: number; column: number } | null {
  const found = /^([A-Z]{1,6})([0-9]{1,10})$/.exec(name);
  const row = Number(found?.[2]);
  if (!found || row < 1 || row > 0x7fffffff) return null;
  return { row, column: [...found[1]!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) };
}

/** Row 7, column 2 → "B7". */
export function cellName(row: number, column: number): string {
  let letters = '';
  for (let left = column; left > 0; left = Math.floor((left - 1) / 26)) letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters;
  return letters + row;
}

const quoted = (cell: string): string => (/[,"\n]/.test(cell) ? `"${cell.replace(/"/g, '""')}"` : cell);

interface Cell {
  row: number;
  column: number;
  type: string;
  style: number;
  value: string; // of <v>
  hasFormula: boolean;
  formula: string;
  inline: string;
}

/** Hears a worksheet, cell by cell, and writes lines of CSV. */
class SheetReader implements Listener {
  private row = 0;
  private column = 0;
  private cell: Cell | null = null;
  private cells = new Map<number, string>();
  private readonly lines = new Map<number, string>();
  private size = 0;

  constructor(private readonly shared: Shared) {}

  open(path: readonly string[], attributes: Attributes): void {
    if (path[0] !== 'worksheet' || path[1] !== 'sheetData') return;
    if (path.length === 3 && path[2] === 'row') this.beginRow(attribute(attributes, 'r'));
    else if (path.length === 4 && path[2] === 'row' && path[3] === 'c') this.beginCell(attributes);
    else if (this.cell && path.length === 5 && path[4] === 'f') this.cell.hasFormula = true;
  }

  text(path: readonly string[], text: string): void {
    const { cell } = this;
    if (!cell || path.length < 5) return;
    const inside = path.slice(4).join('/');
    if (inside === 'v') cell.value += text;
    else if (inside === 'f') cell.formula += text;
    else if (inside === 'is/t' || inside === 'is/r/t') cell.inline += text;
  }

  close(path: readonly string[]): void {
    if (this.cell && path.length === 4) this.endCell(this.cell);
    else if (path.length === 3 && path[2] === 'row' && this.cells.size > 0) this.endRow();
  }

  private beginRow(number: string): void {
    const row = number === '' ? this.row + 1 : placeOf(`A${number}`)?.row;
    if (row === undefined) throw new Unreadable(`the sheet has a row "${number.slice(0, 20)}"`, workbookWanted);
    this.row = row;
    this.column = 0;
    this.cells = new Map();
  }

  private beginCell(attributes: Attributes): void {
    const name = attribute(attributes, 'r');
    const place = name === '' ? { row: this.row, column: this.column + 1 } : placeOf(name);
    if (place?.row !== this.row) throw new Unreadable(`row ${this.row} of the sheet holds a cell "${name.slice(0, 20)}"`, workbookWanted);
    this.column = place.column;
    const style = /^[0-9]+/.exec(attribute(attributes, 's'));
    this.cell = { ...place, type: attribute(attributes, 't'), style: style ? Number(style[0]) : 0, value: '', hasFormula: false, formula: '', inline: '' };
  }

  private endCell(cell: Cell): void {
    this.cell = null;
    const value = this.valueOf(cell);
    if (value === '') return;
    if (cell.row > mostRows || cell.column > mostColumns)
      throw new Unreadable(`the sheet has cells beyond ${mostRows} rows and ${mostColumns} columns`, jobsAlone, cellName(cell.row, cell.column));
    this.cells.set(cell.column, value);
  }

  private endRow(): void {
    let line = '';
    let column = 1;
    for (const at of [...this.cells.keys()].sort((a, b) => a - b)) {
      line += ','.repeat(at - column) + quoted(this.cells.get(at)!);
      column = at;
    }
    this.size += line.length;
    if (this.size > mostText) throw new Unreadable('the sheet holds more than 64 MB of text', jobsAlone);
    if (this.lines.has(this.row)) throw new Unreadable(`the sheet has two rows ${this.row}`, workbookWanted);
    this.lines.set(this.row, line);
    this.cells = new Map();
  }

  private valueOf(cell: Cell): string {
    const { type, value } = cell;
    if (type === 'inlineStr') return clean(withoutEscapes(cell.inline));
    // A formula without a stored value is not for us to compute.
    if (value === '') return cell.hasFormula && type !== 'str' ? `=${clean(cell.formula)}` : '';
    if (type === 's') return clean(this.sharedText(cell));
    if (type === 'b') return value === '1' ? 'TRUE' : 'FALSE';
    if (type === '' || type === 'n') return numberText(value, this.shared.perCent.has(cell.style));
    return clean(withoutEscapes(value)); // results of formulas, errors, dates as text
  }

  private sharedText({ value, row, column }: Cell): string {
    const index = /^[0-9]+/.exec(value);
    const text = index ? this.shared.texts?.[Number(index[0])] : undefined;
    if (text !== undefined) return text;
    const what = this.shared.texts ? 'a cell names a text that the workbook does not have' : 'a cell names a shared text, and the workbook has none';
    throw new Unreadable(what, workbookWanted, cellName(row, column));
  }

  csv(): string {
    const out: string[] = [];
    let row = 1;
    for (const at of [...this.lines.keys()].sort((a, b) => a - b)) {
      out.push('\n'.repeat(at - row), this.lines.get(at)!);
      row = at;
    }
    return out.length === 0 ? '' : out.join('') + '\n';
  }
}

/** The cells of a worksheet; empty for an empty one. Throws Unreadable for cells that make no sense, or too many. */
export function sheetAsCsv(xml: string, part: string, shared: Shared): string {
  const reader = new SheetReader(shared);
  readXml(xml, part, reader);
  return reader.csv();
}
