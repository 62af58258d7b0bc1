// What a file's text amounts to, for a reader of the other system: "48 in" beside "1219 mm". The core reads the file;
// this only shows the same value once more. Grammar and names are those of src/holdback/units: products by * · × . - or a
// space, quotients by /, whole powers, brackets, and a number clings to the unit after it ("lb/3000 ft2").
import { kinds, show, type Units } from './units';

/** Powers of metre, kilogram, second, radian and kelvin. */
type Dimension = readonly number[];
interface Unit {
  factor: number; // SI value of one
  dimension: Dimension;
  offset?: number; // of a temperature scale [K]
  system?: Units; // none: time, angle and the like stand in both
}

const plain: Dimension = [0, 0, 0, 0, 0];
const length: Dimension = [1, 0, 0, 0, 0];
const mass: Dimension = [0, 1, 0, 0, 0];
const time: Dimension = [0, 0, 1, 0, 0];
const angle: Dimension = [0, 0, 0, 1, 0];
const kelvin: Dimension = [0, 0, 0, 0, 1];
const area: Dimension = [2, 0, 0, 0, 0];
const volume: Dimension = [3, 0, 0, 0, 0];
const speed: Dimension = [1, 0, -1, 0, 0];
const force: Dimension = [1, 1, -2, 0, 0];
const pressure: Dimension = [-1, 1, -2, 0, 0];
const energy: Dimension = [2, 1, -2, 0, 0];
const power: Dimension = [2, 1, -3, 0, 0];
const rate: Dimension = [0, 0, -1, 1, 0];

// Exact by definition: international inch, foot, yard and pound (1959), standard gravity (CGPM 1901), International
// Table Btu, conventional densities of the liquid columns.
const inch = 0.0254;
const foot = 0.3048;
const pound = 0.45359237;
const gravity = 9.80665;
const lbf = pound * gravity;
const psi = lbf / inch ** 2;

const rows: [string, Dimension, number, Units | '', number?][] = [
  ['%|percent', plain, 0.01, ''],
  ['m', length, 1, 'si'], ['mm', length, 1e-3, 'si'], ['cm', length, 1e-2, 'si'], ['um|\u00b5m|\u03bcm|micron|microns', length, 1e-6, 'si'], ['km', length, 1e3, 'si'],
  ['in|"|\u2033|inch|inches', length, inch, 'us'], ["ft|'|\u2032|foot|feet", length, foot, 'us'], ['yd', length, 0.9144, 'us'], ['mi|mile|miles', length, 1609.344, 'us'],
  ['mil|mils|thou', length, inch / 1000, 'us'], ['pt|point|points', length, inch / 1000, 'us'],
  ['msf|MSF', area, 1000 * foot ** 2, 'us'], ['L|l', volume, 1e-3, 'si'], ['mL|ml|cc', volume, 1e-6, 'si'],
  ['kg', mass, 1, 'si'], ['g', mass, 1e-3, 'si'], ['mg', mass, 1e-6, 'si'], ['lb|lbs|lbm', mass, pound, 'us'], ['oz', mass, pound / 16, 'us'], ['t|tonne|tonnes', mass, 1000, 'si'],
  ['gsm|GSM', [-2, 1, 0, 0, 0], 1e-3, 'si'],
  ['s|sec', time, 1, ''], ['ms', time, 1e-3, ''], ['min', time, 60, ''], ['h|hr|hrs|hour|hours', time, 3600, ''], ['d|day|days', time, 86400, ''], ['week|weeks|wk', time, 604800, ''],
  ['mpm|MPM', speed, 1 / 60, 'si'], ['fpm|FPM', speed, foot / 60, 'us'],
  ['N', force, 1, 'si'], ['mN', force, 1e-3, 'si'], ['cN', force, 1e-2, 'si'], ['daN', force, 10, 'si'], ['kN', force, 1000, 'si'], ['lbf', force, lbf, 'us'], ['ozf', force, lbf / 16, 'us'],
  ['kgf|kp', force, gravity, 'si'], ['gf', force, gravity / 1000, 'si'],
  ['pli|PLI', [0, 1, -2, 0, 0], lbf / inch, 'us'],
  ['Pa', pressure, 1, 'si'], ['hPa', pressure, 100, 'si'], ['kPa', pressure, 1e3, 'si'], ['MPa', pressure, 1e6, 'si'], ['GPa', pressure, 1e9, 'si'], ['bar|barg', pressure, 1e5, 'si'], ['mbar', pressure, 100, 'si'],
  ['psi|PSI|psig|PSIG', pressure, psi, 'us'], ['kpsi|ksi|KSI', pressure, 1e3 * psi, 'us'], ['Mpsi', pressure, 1e6 * psi, 'us'],
  ['inH2O|inH\u2082O|inWC', pressure, 1000 * gravity * inch, 'us'], ['mmH2O|mmH\u2082O', pressure, gravity, 'si'], ['inHg', pressure, 13595.1 * gravity * inch, 'us'], ['mmHg', pressure, 13.5951 * gravity, 'si'],
  ['at', pressure, gravity * 1e4, 'si'],
  ['Nm', energy, 1, 'si'], ['J', energy, 1, 'si'], ['kJ', energy, 1e3, 'si'], ['MJ', energy, 1e6, 'si'], ['GJ', energy, 1e9, 'si'], ['Wh', energy, 3600, 'si'], ['kWh', energy, 3.6e6, 'si'], ['Btu|BTU|btu', energy, 1055.05585262, 'us'],
  ['W', power, 1, 'si'], ['kW', power, 1e3, 'si'], ['hp|HP', power, 550 * foot * lbf, 'us'],
  ['rad', angle, 1, ''], ['deg|\u00b0', angle, Math.PI / 180, ''], ['rev|revs|turn|turns', angle, 2 * Math.PI, ''], ['rpm|RPM', rate, (2 * Math.PI) / 60, ''], ['Hz', rate, 2 * Math.PI, ''],
  ['K', kelvin, 1, 'si'], ['degC|\u00b0C|\u2103', kelvin, 1, 'si', 273.15], ['degF|\u00b0F|\u2109', kelvin, 5 / 9, 'us', (459.67 * 5) / 9],
];

export const unitNames: ReadonlyMap<string, Unit> = new Map(rows.flatMap(([names, dimension, factor, system, offset]) =>
  names.split('|').map((name): [string, Unit] => [name, { factor, dimension, ...(system === '' ? {} : { system }), ...(offset === undefined ? {} : { offset }) }])));

interface Measure {
  factor: number;
  dimension: Dimension;
  offset?: number; // of one unit alone
  systems: Units[]; // of the units in it
}

const one: Measure = { factor: 1, dimension: plain, systems: [] };
const raised = (a: Measure, n: number): Measure => (n === 1 ? a : { factor: a.factor ** n, dimension: a.dimension.map((p) => p * n), systems: a.systems });
const joined = (a: Measure, b: Measure, sign: 1 | -1): Measure =>
  ({ factor: a.factor * b.factor ** sign, dimension: a.dimension.map((p, i) => p + sign * b.dimension[i]!), systems: [...a.systems, ...b.systems] });

const number = /^(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/;
const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const deepest = 16;

/** One descent over one text; null where it is no unit. */
class Reader {
  private at = 0;
  constructor(private readonly text: string) {}

  whole(): Measure | null {
    this.blanks();
    const measure = this.rest(this.text[this.at] === '/' ? one : this.factor(0), 0);
    return measure && this.at >= this.text.length ? measure : null;
  }

  private blanks(): boolean {
    const from = this.at;
    while (/[\s\u00a0\u2009\u202f]/.test(this.text[this.at] ?? '')) ++this.at;
    return this.at > from;
  }
  private take(pattern: RegExp): string | null {
    const found = pattern.exec(this.text.slice(this.at));
    if (found) this.at += found[0].length;
    return found ? found[0] : null;
  }
  private atUnit = (): boolean => /^[\p{L}%"'\u2032\u2033\u00b0\u2103\u2109(]/u.test(this.text.slice(this.at));

  private rest(first: Measure | null, depth: number): Measure | null {
    let left = first;
    while (left) {
      const spaced = this.blanks();
      if (this.at >= this.text.length || this.text[this.at] === ')') break;
      const sign = this.take(/^\//) ? -1 : this.take(/^(?:[*.·⋅×]|-(?=\s*\p{L}))/u) || (this.atUnit() && (spaced || /[()]/.test(this.text[this.at]! + this.text[this.at - 1]!))) ? 1 : 0;
      const right: Measure | null = sign === 0 ? null : this.factor(depth);
      left = right && joined(left, right, sign as 1 | -1);
    }
    return left;
  }

  private factor(depth: number): Measure | null {
    this.blanks();
    if (this.atUnit()) return this.unit(depth);
    const multiple = Number(this.take(number));
    if (!(multiple > 0)) return null;
    const from = this.at;
    this.blanks();
    if (!this.atUnit()) {
      this.at = from;
      return { ...one, factor: multiple };
    }
    const unit = this.unit(depth);
    return unit && joined({ ...one, factor: multiple }, unit, 1);
  }

  private unit(depth: number): Measure | null {
    if (this.take(/^\(/)) {
      const inner = depth < deepest ? this.rest(this.factor(depth + 1), depth + 1) : null;
      return inner && this.take(/^\)/) ? this.powered(inner) : null;
    }
    const measure = this.named();
    return measure && this.powered(measure);
  }

  private named(): Measure | null {
    const long = /^(?:[%"'\u2032\u2033]|[\p{L}\u00b0\u2082\u2103\u2109][\p{L}\u00b0\u2082\u2103\u2109\d]*)/u.exec(this.text.slice(this.at))?.[0] ?? '';
    const name = unitNames.has(long) ? long : long.replace(/\d.*$/, '');
    this.at += name.length;
    if (name === 'sq' || name === 'cu') {
      this.blanks();
      const unit = this.named();
      return unit && raised(unit, name === 'sq' ? 2 : 3);
    }
    const unit = unitNames.get(name);
    if (!unit) return null;
    return { factor: unit.factor, dimension: unit.dimension, ...(unit.offset === undefined ? {} : { offset: unit.offset }), systems: unit.system ? [unit.system] : [] };
  }

  private powered(base: Measure): Measure | null {
    const written = this.take(/^(?:\^?-?\d|⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹])/u);
    if (written === null) return base;
    const power = Number(written.replace('^', '').replace('⁻', '-').replace(/[⁰¹²³⁴-⁹]/u, (c) => String(superscripts.indexOf(c))));
    return power === 0 ? null : raised(base, power);
  }
}

const read = new Map<string, Measure | null>();
function measureOf(unit: string): Measure | null {
  if (unit.length > 200) return null;
  if (!read.has(unit)) {
    if (read.size > 500) read.clear();
    read.set(unit, new Reader(unit).whole());
  }
  return read.get(unit) ?? null;
}

const same = (a: Dimension, b: Dimension): boolean => a.every((power, i) => power === b[i]);

interface ReadText {
  si: number;
  systems: Units[];
}

function readText(text: string, kind: string): ReadText | null {
  const parts = /^\s*([-+\u2212]?)((?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)\s*(\D.*)$/u.exec(text.trim());
  const measure = parts ? measureOf(parts[3]!.trim()) : null;
  const wanted = measureOf(kinds[kind]?.base ?? '');
  if (!parts || !measure || !wanted) return null;
  // A count a time is a frequency as it stands: one cycle is a whole turn.
  const cycles = kind === 'frequency' && same(measure.dimension, [0, 0, -1, 0, 0]) ? 2 * Math.PI : 1;
  if (cycles === 1 && !same(measure.dimension, wanted.dimension)) return null;
  const value = Number(parts[2]) * (parts[1] === '' || parts[1] === '+' ? 1 : -1);
  const si = value * measure.factor * cycles + (kind === 'temperature' ? measure.offset ?? 0 : 0);
  return Number.isFinite(si) ? { si, systems: measure.systems } : null;
}

/** The SI value of a file's text; nothing where it is no quantity of this kind. */
export function siOf(text: unknown, kind: string): number | undefined {
  return typeof text === 'string' ? readText(text, kind)?.si : undefined;
}

/** The value of a file's text in the reader's units, where the text has units of the other system; else nothing. */
export function inOtherUnits(text: unknown, kind: string, units: Units): string {
  const shown = kinds[kind];
  if (typeof text !== 'string' || !shown || shown.si.unit === shown.us.unit) return '';
  const found = readText(text, kind);
  return found && found.systems.some((system) => system !== units) ? show(found.si, kind, units) : '';
}

/** A range of the schema, "5 mm to 5 m" or "Above 0 N, at most 10 N", in the reader's units. */
export function rangeIn(range: string, kind: string, units: Units): string {
  return range.replace(/^(Above )?(.+?)( to |, at most )(.+)$/, (_, above: string | undefined, low: string, between: string, high: string) =>
    `${above ?? ''}${inOtherUnits(low, kind, units) || low}${between}${inOtherUnits(high, kind, units) || high}`);
}
