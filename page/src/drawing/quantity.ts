/**
 * Quantities as the drawing and the strips need them: texts of a stand file to SI, and SI to a text. Only kinds that
 * stand on the drawing; names of units as a stand file may have them.
 */
import { inUnits, readable, showNumber, unitOf, type Units } from '../units';

export { inUnits as in_unit, unitOf as unit_of, readable } from '../units';
export type { Units } from '../units';

const metres: Record<string, number> = {
  m: 1, mm: 1e-3, cm: 1e-2, um: 1e-6, 'µm': 1e-6, 'μm': 1e-6, micron: 1e-6, microns: 1e-6, km: 1e3,
  in: 0.0254, '"': 0.0254, '″': 0.0254, inch: 0.0254, inches: 0.0254,
  ft: 0.3048, "'": 0.3048, '′': 0.3048, foot: 0.3048, feet: 0.3048, yd: 0.9144,
  mil: 2.54e-5, mils: 2.54e-5, thou: 2.54e-5, pt: 2.54e-5, point: 2.54e-5, points: 2.54e-5,
};
const radians: Record<string, number> = {
  rad: 1, deg: Math.PI / 180, '°': Math.PI / 180, rev: 2 * Math.PI, turn: 2 * Math.PI, turns: 2 * Math.PI,
};
const psi = (0.45359237 * 9.80665) / (0.0254 * 0.0254);
const pascals: Record<string, number> = {
  Pa: 1, hPa: 100, kPa: 1e3, MPa: 1e6, bar: 1e5, barg: 1e5, mbar: 100,
  psi, PSI: psi, psig: psi, PSIG: psi, kpsi: 1e3 * psi, ksi: 1e3 * psi,
};
const square_metres: Record<string, number> = {
  m2: 1, 'm²': 1, cm2: 1e-4, 'cm²': 1e-4, mm2: 1e-6, 'mm²': 1e-6, in2: 0.0254 ** 2, 'in²': 0.0254 ** 2,
};
const metres_per_second: Record<string, number> = {
  'm/s': 1, 'm/min': 1 / 60, mpm: 1 / 60, MPM: 1 / 60, 'mm/s': 1e-3, 'km/h': 1 / 3.6,
  'ft/min': 0.3048 / 60, fpm: 0.3048 / 60, FPM: 0.3048 / 60, 'ft/s': 0.3048, 'in/s': 0.0254, 'yd/min': 0.9144 / 60,
};

/** A number and a unit of the table, in SI; nothing for any other text. */
function read(text: unknown, table: Record<string, number>): number | undefined {
  if (typeof text !== 'string') return undefined;
  const parts = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(\S+)\s*$/.exec(text);
  if (!parts) return undefined;
  const factor = Object.hasOwn(table, parts[2]!) ? table[parts[2]!]! : undefined;
  const value = factor === undefined ? NaN : Number(parts[1]) * factor;
  return Number.isFinite(value) ? value : undefined;
}

export const length_of = (text: unknown) => read(text, metres);               // [m]
export const angle_of = (text: unknown) => read(text, radians);               // [rad]
export const pressure_of = (text: unknown) => read(text, pascals);            // [Pa]
export const area_of = (text: unknown) => read(text, square_metres);          // [m²]
export const speed_of = (text: unknown) => read(text, metres_per_second);     // [m/s]
/** A scale's degree [K]. */
export function temperature_of(text: unknown): number | undefined {
  const kelvin = read(text, { K: 1 });
  if (kelvin !== undefined) return kelvin;
  const celsius = read(text, { degC: 1, '°C': 1, '℃': 1 });
  if (celsius !== undefined) return celsius + 273.15;
  const fahrenheit = read(text, { degF: 1, '°F': 1, '℉': 1 });
  return fahrenheit === undefined ? undefined : ((fahrenheit + 459.67) * 5) / 9;
}

/** A number in the reader's unit back to SI. */
export function from_unit(value: number, kind: string, units: Units): number {
  const zero = inUnits(0, kind, units), one = inUnits(1, kind, units);
  return (value - zero) / (one - zero);
}

/** Number and unit with a plain space between, so that SVG text may break there; whole degrees. */
export function show(si: number, kind: string, units: Units, count = 3): string {
  if (kind === 'temperature') return `${readable(Math.round(inUnits(si, kind, units)), 1)} ${unitOf(kind, units)}`;
  const number = showNumber(si, kind, units, count), unit = unitOf(kind, units);
  return unit === '' || unit === '°' ? number + unit : `${number} ${unit}`;
}

/** A size as a drawing states it: no zeros behind the point that say nothing. */
export const size = (si: number, units: Units, kind = 'short_length') =>
  show(si, kind, units).replace(/(\.\d*?)0+(?=[ °])/, '$1').replace(/\.(?=[ °])/, '');
