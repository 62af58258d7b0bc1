// Numbers for a reader. The table repeats what the core shows (kinds, units, digits): the page only displays, and the
// SI/US switch changes nothing that is asked of the core.
import type { Show } from './contract';

export type Units = 'si' | 'us';

/** Shown value = (SI − offset) / factor. */
interface Shown {
  unit: string;
  factor: number;
  offset?: number;
}
interface Kind {
  si: Shown;
  us: Shown;
  base: string; // coherent SI unit, as answers name it
  examples: string; // as the schema of stand files shows the kind
}

const inch = 0.0254;
const foot = 0.3048;
const pound = 0.45359237;
const lbf = pound * 9.80665;
const psi = lbf / inch ** 2;
const btu = 1055.05585262;
const rev = 2 * Math.PI;
const fahrenheit = 5 / 9;
const horsepower = 550 * foot * lbf;

const one = (unit: string, factor = 1, offset?: number): Shown => (offset === undefined ? { unit, factor } : { unit, factor, offset });
const row = (base: string, si: Shown, us: Shown, examples: string): Kind => ({ base, si, us, examples });

export const kinds: Record<string, Kind> = {
  number: row('1', one(''), one(''), '0.8|12'),
  ratio: row('1', one('%', 0.01), one('%', 0.01), '35 %|0.35'),
  count: row('1', one(''), one(''), '4|12'),
  price: row('1', one(''), one(''), '120|85.50'),
  short_length: row('m', one('mm', 1e-3), one('in', inch), '1200 mm|1.2 m|48 in'),
  caliper: row('m', one('µm', 1e-6), one('mil', inch / 1000), '12 um|0.1 mm|2 mil|18 pt'),
  web_length: row('m', one('m'), one('ft', foot), '6000 m|20000 ft'),
  area: row('m2', one('cm²', 1e-4), one('in²', inch ** 2), '25 cm2|4 in2'),
  volume: row('m3', one('cm³', 1e-6), one('in³', inch ** 3), '40 cm3|2.5 in3|5 L'),
  speed: row('m/s', one('m/min', 1 / 60), one('ft/min', foot / 60), '300 m/min|1000 ft/min|5 m/s'),
  acceleration: row('m/s2', one('m/s²'), one('ft/s²', foot), '0.5 m/s2|1.5 ft/s2'),
  mass: row('kg', one('kg'), one('lb', pound), '80 kg|180 lb'),
  basis_weight: row('kg/m2', one('g/m²', 1e-3), one('lb/3000 ft²', pound / (3000 * foot ** 2)), '80 g/m2|40 lb/3000 ft2|20 lb/1300 ft2'),
  density: row('kg/m3', one('kg/m³'), one('lb/ft³', pound / foot ** 3), '920 kg/m3|0.92 g/cm3|57 lb/ft3'),
  force: row('N', one('N'), one('lbf', lbf), '150 N|35 lbf'),
  tension_per_width: row('N/m', one('N/m'), one('lbf/in', lbf / inch), '200 N/m|1.2 lbf/in|1.2 pli'),
  stress: row('Pa', one('MPa', 1e6), one('psi', psi), '30 MPa|4000 psi'),
  modulus: row('Pa', one('GPa', 1e9), one('kpsi', 1000 * psi), '4.5 GPa|650 kpsi'),
  pressure: row('Pa', one('bar', 1e5), one('psi', psi), '2.5 bar|35 psi|250 kPa'),
  torque: row('N*m', one('N·m'), one('in·lbf', inch * lbf), '50 N*m|440 in*lbf|37 ft*lbf'),
  torque_per_pressure: row('N*m/Pa', one('N·m/bar', 1e-5), one('in·lbf/psi', (inch * lbf) / psi), '40 N*m/bar|24 in*lbf/psi'),
  inertia: row('kg*m2', one('kg·m²'), one('lb·ft²', pound * foot ** 2), '0.5 kg*m2|12 lb*ft2'),
  power: row('W', one('W'), one('hp', horsepower), '1500 W|1.5 kW|2 hp'),
  energy: row('J', one('kJ', 1000), one('ft·lbf', foot * lbf), '20 kJ|15000 ft*lbf'),
  temperature: row('K', one('°C', 1, 273.15), one('°F', fahrenheit, 459.67 * fahrenheit), '23 degC|73 degF|296 K'),
  temperature_difference: row('K', one('K'), one('°F', fahrenheit), '60 K|60 degC|110 degF'),
  duration: row('s', one('s'), one('s'), '12 s|250 ms|1.5 min'),
  running_time: row('s', one('h', 3600), one('h', 3600), '2000 h|45 min'),
  calendar_time: row('s', one('weeks', 604800), one('weeks', 604800), '26 weeks|10 days'),
  rotational_speed: row('rad/s', one('rev/min', rev / 60), one('rev/min', rev / 60), '300 rev/min|300 rpm|31 rad/s'),
  angle: row('rad', one('°', Math.PI / 180), one('°', Math.PI / 180), '90 deg|1.57 rad'),
  turns: row('rad', one('rev', rev), one('rev', rev), '3 rev|3 turns'),
  specific_heat: row('J/(kg*K)', one('J/(kg·K)'), one('Btu/(lb·°F)', btu / (pound * fahrenheit)), '460 J/(kg*K)|0.11 Btu/(lb*degF)'),
  conductance: row('W/K', one('W/K'), one('Btu/(h·°F)', btu / (3600 * fahrenheit)), '4 W/K|7.6 Btu/(h*degF)'),
  thermal_conductivity: row('W/(m*K)', one('W/(m·K)'), one('Btu/(h·ft·°F)', btu / (3600 * foot * fahrenheit)), '48 W/(m*K)|28 Btu/(h*ft*degF)'),
  fade: row('1/K', one('%/K', 0.01), one('%/°F', 0.01 / fahrenheit), '0.1 %/K|0.055 %/degF|0.001/K'),
  wear_rate: row('m3/J', one('mm³/MJ', 1e-15), one('in³/(hp·h)', inch ** 3 / (horsepower * 3600)), '30 mm3/MJ|0.005 in3/(hp*h)'),
  pressure_speed: row('Pa*m/s', one('MPa·m/s', 1e6), one('psi·ft/min', (psi * foot) / 60), '2 MPa*m/s|57000 psi*ft/min'),
  friction_slope: row('s/m', one('%/(m/s)', 0.01), one('%/(ft/s)', 0.01 / foot), '1.5 %/(m/s)|0.5 %/(ft/s)|0.015 s/m'),
  damping: row('N*s/m', one('N·s/m'), one('lbf·s/ft', lbf / foot), '100 N*s/m|7 lbf*s/ft'),
  frequency: row('rad/s', one('Hz', rev), one('Hz', rev), '2.5 Hz|150 1/min|16 rad/s'),
};

const kindOf = (kind: string): Kind => kinds[kind] ?? kinds['number']!;

/** The kind whose examples end a field's examples in the schema; empty for a text or a word. */
export function kindFromExamples(examples: readonly unknown[]): string {
  const text = examples.join('|');
  const fits = Object.entries(kinds).filter(([, kind]) => text === kind.examples || text.endsWith('|' + kind.examples));
  // "4|12" of a count ends no other kind's examples; the longest wins where one is the tail of another.
  return fits.sort((a, b) => b[1].examples.length - a[1].examples.length)[0]?.[0] ?? '';
}

export const inUnits = (value: number, kind: string, units: Units): number => {
  const shown = kindOf(kind)[units];
  return shown.offset === undefined ? value / shown.factor : (value / shown.factor) - shown.offset / shown.factor;
};

export const unitOf = (kind: string, units: Units): string => kindOf(kind)[units].unit;

/** `digits` significant digits, but those before the point are never rounded away: 1234.5 is "1234". */
export function readable(value: number, digits = 3): string {
  if (Number.isNaN(value)) return 'undefined';
  if (!Number.isFinite(value)) return value > 0 ? '∞' : '−∞';
  if (value === 0) return '0';
  const size = Math.abs(value);
  const beforePoint = Math.floor(Math.log10(size)) + 1;
  const shown = Math.max(digits, beforePoint);
  const exponent = Number(size.toExponential(shown - 1).split('e')[1]);
  const text = exponent < -6 || exponent >= 15 ? size.toExponential(digits - 1) : fixed(size, Math.max(0, shown - 1 - exponent));
  return (value < 0 ? '−' : '') + text;
}

/** toFixed() with a tie to the even digit, as the core writes: 1234.5 is "1234". */
function fixed(size: number, digits: number): string {
  const text = size.toFixed(digits);
  const exact = size.toFixed(Math.min(100, digits + 40));
  const tie = /^50*$/.test(digits === 0 ? (exact.split('.')[1] ?? '') : exact.slice(exact.indexOf('.') + 1 + digits));
  if (!tie || /[02468]$/.test(text)) return text;
  return (Number(text) - 10 ** -digits).toFixed(digits); // JavaScript rounds ties up
}

export function showNumber(value: number, kind: string, units: Units, digits = 3): string {
  const number = inUnits(value, kind, units);
  return kind === 'count' ? readable(Math.round(number), 1) : readable(number, digits);
}

const noBreak = '\u00a0';
const joined = (number: string, unit: string): string => (unit === '' ? number : number + noBreak + unit.replace(/ /g, noBreak));

export const show: Show = (value, kind, units) => joined(showNumber(value, kind, units), unitOf(kind, units));
export const showDigits = (value: number, kind: string, units: Units, digits: number): string =>
  joined(showNumber(value, kind, units, digits), unitOf(kind, units));

/** What is in hand beyond a bound. Rounded to the worse side, so that a limit not kept never reads as +0 %. */
export function inHand(margin: number): string {
  const percent = 100 * (margin - 1);
  if (percent >= 900) return `>+900${noBreak}%`;
  const shown = Math.floor(percent + 1e-9);
  return `${shown < 0 ? '−' : '+'}${Math.abs(shown)}${noBreak}%`;
}

/** As the core writes it: `kind` names a row of the table above. */
export interface Amount {
  value: number; // SI
  unit: string;
  kind: string;
}
/** A sentence of the core: `text` with its amounts in SI, `pattern` with a place {0}, {1}, … for each. */
export interface Note {
  text: string;
  pattern: string;
  amounts: Amount[];
}

/** A sentence of the core with its amounts in the reader's units. */
export function noteText(note: Note, units: Units): string {
  if (units === 'si') return note.text;
  // A brace that names no amount stays: it may belong to a name that somebody gave.
  return note.pattern.replace(/\{(\d{1,2})\}/g, (place, index: string) => {
    const amount = note.amounts[Number(index)];
    return amount ? show(amount.value, amount.kind, units) : place;
  });
}
