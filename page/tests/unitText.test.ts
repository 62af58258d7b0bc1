// Values: NIST Special Publication 811 (2008), appendix B.8; the names: the core's own table, read as text.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tables } from '../src/schema/fields';
import { inOtherUnits, rangeIn, siOf, unitNames } from '../src/unitText';
import { kinds } from '../src/units';

const plain = (text: string) => text.replace(/\u00a0/g, ' ');

describe('the text of a quantity', () => {
  it('amounts to what NIST SP 811 says of its unit', () => {
    const rows: [string, string, number][] = [
      ['1 in', 'short_length', 2.54e-2], ['1 ft/min', 'speed', 5.08e-3], ['1 lbf', 'force', 4.448222], ['1 psi', 'pressure', 6.894757e3], ['1 lbf/in', 'tension_per_width', 1.751268e2],
      ['1 ft*lbf', 'torque', 1.355818], ['1 lb/ft3', 'density', 16.01846], ['1 hp', 'power', 7.456999e2], ['1 Btu/(lb*degF)', 'specific_heat', 4.1868e3], ['1 inHg', 'pressure', 3.386389e3], ['1 lb*ft2', 'inertia', 4.214011e-2],
      ['1 oz', 'mass', 2.834952e-2], ['1 mil', 'caliper', 2.54e-5], ['1 kgf', 'force', 9.80665], ['1 at', 'pressure', 9.80665e4],
    ];
    for (const [text, kind, value] of rows) expect(siOf(text, kind)! / value, text).toBeCloseTo(1, 6);
    expect(siOf('32 degF', 'temperature')).toBeCloseTo(273.15, 9);
    expect(siOf('9 °F', 'temperature_difference')).toBeCloseTo(5, 12);
    // 500 sheets of 24 in × 36 in are 3000 ft²: 1 lb/3000 ft² = 1.6275 g/m² (TAPPI TIP 0800-01, from memory).
    expect(siOf('40 lb/3000 ft2', 'basis_weight')).toBeCloseTo(40 * 1.62748e-3, 6);
  });
  it('is read however it is written', () => {
    for (const text of ['24 in*lbf/psi', '24 in·lbf/psi', '24 in-lbf/psi', '24 in lbf / psi', '24 (in lbf)/psi']) expect(siOf(text, 'torque_per_pressure'), text).toBeCloseTo((24 * 0.0254 * 4.4482216152605) / 6894.757293168361, 12);
    for (const text of ['4 in2', '4 in²', '4 in^2', '4 sq in', '4in2']) expect(siOf(text, 'area'), text).toBeCloseTo(4 * 0.0254 ** 2, 15);
    for (const text of ['0.001/K', '0.1 %/K']) expect(siOf(text, 'fade'), text).toBeCloseTo(0.001, 15);
    expect(siOf('150 1/min', 'frequency')).toBeCloseTo(5 * Math.PI, 12);
    expect(siOf('48"', 'short_length')).toBeCloseTo(1.2192, 12);
    expect(siOf('2 inH2O', 'pressure')).toBeCloseTo(2 * 249.08891, 4);
  });
  it('is nothing where it is none', () => {
    for (const text of ['', 'x', '12', '12 bananas', '12 psi', '12 m/', '12 (m', '12 m)', '1,5 m', '12 m0', '('.repeat(50), '1 ' + 'm*'.repeat(500), 12, undefined]) expect(siOf(text, 'short_length'), String(text)).toBeUndefined();
  });
  it('knows every unit that the core knows, and its kinds’ own examples', () => {
    const source = readFileSync('../src/holdback/units/unit_table.cpp', 'utf8');
    const names = [...source.slice(source.indexOf('constexpr Unit table[]')).matchAll(/^ {4}\{"((?:\\.|[^"\\])*)", "((?:\\.|[^"\\])*)"/gm)]
      .flatMap(([, symbol, aliases]) => [symbol!, ...aliases!.split(' ')]).filter((one) => one !== '').map((one) => JSON.parse(`"${one}"`) as string);
    expect(names.length).toBeGreaterThan(100);
    expect([...unitNames.keys()].sort()).toEqual([...new Set(names)].sort());
    for (const [kind, { examples, si, us }] of Object.entries(kinds))
      for (const text of [...examples.split('|'), ...[si.unit, us.unit].filter((unit) => unit !== '').map((unit) => `1 ${unit}`)])
        if (/[^\d.]/.test(text)) expect(siOf(text, kind), `${kind} ${text}`).toBeGreaterThan(0);
    for (const [kind, { si, us }] of Object.entries(kinds)) for (const shown of [si, us])
      if (shown.unit !== '') expect(siOf(`1 ${shown.unit}`, kind)! / (shown.factor + (shown.offset ?? 0)), `${kind} ${shown.unit}`).toBeCloseTo(1, 12);
  });
});

describe('the reader’s units beside the file’s', () => {
  it('stand where the file has the other system, and only there', () => {
    expect(plain(inOtherUnits('48 in', 'short_length', 'si'))).toBe('1219 mm');
    expect(inOtherUnits('48 in', 'short_length', 'us')).toBe('');
    expect(plain(inOtherUnits('300 m/min', 'speed', 'us'))).toBe('984 ft/min');
    expect(plain(inOtherUnits('23 degC', 'temperature', 'us'))).toBe('73.4 °F');
    expect(inOtherUnits('300 rev/min', 'rotational_speed', 'us')).toBe('');
    expect(inOtherUnits('12 s', 'duration', 'us')).toBe('');
    expect(inOtherUnits('PET 23', 'force', 'us')).toBe('');
    expect(inOtherUnits(0.35, 'ratio', 'us')).toBe('');
  });
  it('also in ranges', () => {
    expect(plain(rangeIn('5 mm to 5 m', 'short_length', 'us'))).toBe('0.197 in to 197 in');
    expect(plain(rangeIn('Above 0 m/min, at most 3000 m/min', 'speed', 'us'))).toBe('Above 0 ft/min, at most 9843 ft/min');
    expect(rangeIn('5 mm to 5 m', 'short_length', 'si')).toBe('5 mm to 5 m');
    expect(rangeIn('1 to 24', 'count', 'us')).toBe('1 to 24');
    for (const field of tables.flatMap((one) => [one, ...one.inside]).flatMap((one) => one.fields))
      if (field.range && kinds[field.kind]!.si.unit !== kinds[field.kind]!.us.unit) expect(rangeIn(field.range, field.kind, 'us'), field.key).not.toBe(field.range);
  });
});
