/**
 * Quantities as the drawing and the strips need them: texts of a stand file to SI, and SI to a text.
 */
import { inUnits, readable, showNumber, unitOf, type Units } from '../units';
import { siOf } from '../unitText';

export { inUnits as in_unit, unitOf as unit_of, readable } from '../units';
export type { Units } from '../units';

export const length_of = (text: unknown) => siOf(text, 'short_length');        // [m]
export const angle_of = (text: unknown) => siOf(text, 'angle');                // [rad]
export const pressure_of = (text: unknown) => siOf(text, 'pressure');          // [Pa]
export const area_of = (text: unknown) => siOf(text, 'area');                  // [m²]
export const speed_of = (text: unknown) => siOf(text, 'speed');                // [m/s]
export const temperature_of = (text: unknown) => siOf(text, 'temperature');    // a scale's degree [K]

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
