import { describe, expect, it } from 'vitest';
import { angle_of, from_unit, in_unit, length_of, pressure_of, show, size, speed_of, temperature_of } from './quantity';

describe('texts of a stand file', () => {
  it.each([
    // Exact by definition: inch and foot of 1959.
    ['640 mm', 0.64], ['1.2 m', 1.2], ['48 in', 1.2192], ['2 ft', 0.6096], ['18 pt', 0.0004572], ['12 um', 12e-6], ['12 µm', 12e-6], ['5"', 0.127],
  ])('reads the length %s', (text, metres) => expect(length_of(text)).toBeCloseTo(metres, 12));

  it('reads angles, pressures, speeds and temperatures', () => {
    expect(angle_of('180 deg')).toBeCloseTo(Math.PI, 12);
    expect(pressure_of('2.5 bar')).toBe(250000);
    expect(pressure_of('1 psi')).toBeCloseTo(6894.757, 3);  // NIST SP 811
    expect(speed_of('180 m/min')).toBe(3);
    expect(speed_of('1000 ft/min')).toBeCloseTo(5.08, 12);
    expect(temperature_of('0 degC')).toBe(273.15);
    expect(temperature_of('212 degF')).toBeCloseTo(373.15, 10);
  });

  it('has nothing for a bare number, another kind, or no text', () => {
    for (const bad of ['640', 'mm', '', '640 kg', '1e999 m', 640, null, undefined, {}, '5 constructor']) expect(length_of(bad)).toBeUndefined();
  });
});

describe('numbers for a reader', () => {
  it('come back from the unit in which they are shown', () => {
    for (const kind of ['force', 'pressure', 'speed', 'temperature', 'short_length'])
      for (const units of ['si', 'us'] as const) expect(from_unit(in_unit(321.5, kind, units), kind, units)).toBeCloseTo(321.5, 8);
    expect(from_unit(1, 'pressure', 'si')).toBeCloseTo(1e5, 6);
    expect(from_unit(212, 'temperature', 'us')).toBeCloseTo(373.15, 9);
  });

  it('show whole degrees, and sizes without idle zeros', () => {
    expect(show(357.4, 'temperature', 'si')).toBe('84 °C');
    expect(size(0.09, 'si')).toBe('90 mm');
    expect(size(0.1524, 'us')).toBe('6 in');
    expect(size(2.6179938779914944, 'si', 'angle')).toBe('150°');
    expect(size(1.25, 'si', 'web_length')).toBe('1.25 m');
  });
});
