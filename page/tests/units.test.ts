// Conversions: exact decimal definitions of the US units (inch 25.4 mm, pound 0.45359237 kg, standard gravity), from memory.
import { describe, expect, it } from 'vitest';
import { tables } from '../src/schema/fields';
import { splitHelp } from '../src/schema/fields';
import { inHand, inUnits, noteText, readable, show } from '../src/units';

const plain = (text: string) => text.replace(/\u00a0/g, ' ');

describe('show', () => {
  it('shows SI and US with three digits, never rounding whole digits away', () => {
    expect(plain(show(0.0254, 'short_length', 'us'))).toBe('1.00 in');
    expect(plain(show(1.2345, 'short_length', 'si'))).toBe('1234 mm');
    expect(plain(show(5, 'speed', 'si'))).toBe('300 m/min');
    expect(plain(show(250000, 'pressure', 'us'))).toBe('36.3 psi');
    expect(plain(show(373.15, 'temperature', 'us'))).toBe('212 °F');
    expect(plain(show(273.15, 'temperature', 'si'))).toBe('0 °C');
    expect(plain(show(0.08, 'ratio', 'si'))).toBe('8.00 %');
    expect(show(3.2, 'count', 'si')).toBe('3');
  });
  it('converts by the definitions', () => {
    expect(inUnits(4.4482216152605, 'force', 'us')).toBeCloseTo(1, 12);
    expect(inUnits(745.6998715822702, 'power', 'us')).toBeCloseTo(1, 12);
    expect(inUnits(6894.757293168361, 'stress', 'us')).toBeCloseTo(1, 12);
  });
  it('survives what is no number', () => {
    expect(readable(Infinity)).toBe('∞');
    expect(readable(NaN)).toBe('undefined');
    expect(readable(0.00012345)).toBe('0.000123');
  });
});

describe('inHand', () => {
  it('rounds to the worse side', () => {
    expect(plain(inHand(0.9999))).toBe('−1 %');
    expect(plain(inHand(1.169))).toBe('+16 %');
    expect(plain(inHand(50))).toBe('>+900 %');
  });
});

describe('noteText', () => {
  const note = { text: 'slip power 1987 W above 1465 W at 1000 mm; pad life 463 h below 500 h', amounts: [{ value: 1987.1, unit: 'W' }, { value: 1464.68, unit: 'W' }, { value: 1, unit: 'm' }, { value: 463 * 3600, unit: 's' }, { value: 500 * 3600, unit: 's' }] };
  it('is the core’s own text in SI, and the same sentence in US units', () => {
    expect(noteText(note, 'si')).toBe(note.text);
    expect(plain(noteText(note, 'us'))).toBe('slip power 2.66 hp above 1.96 hp at 39.4 in; pad life 463 h below 500 h');
  });
});

describe('noteText, amounts out of order', () => {
  it('finds each where it stands, and twice the same twice', () => {
    const note = { text: 'The tension lies above the window of 40.6 N to 49.6 N; inside is 0.100 % likely. Then 49.6 N.', amounts: [{ value: 0.001, unit: '1' }, { value: 49.61, unit: 'N' }, { value: 40.59, unit: 'N' }, { value: 49.61, unit: 'N' }] };
    expect(plain(noteText(note, 'us'))).toBe('The tension lies above the window of 9.12 lbf to 11.2 lbf; inside is 0.100 % likely. Then 11.2 lbf.');
  });
  it('never takes a part of another number', () => {
    const note = { text: 'from 10.0 mm to 10.0 m and 110.0 m', amounts: [{ value: 10, unit: 'm' }] };
    expect(plain(noteText(note, 'us'))).toBe('from 10.0 mm to 32.8 ft and 110.0 m');
  });
});

describe('the schema', () => {
  it('gives every quantity a kind, so that no unit is shown wrong', () => {
    const all = tables.flatMap((one) => [one, ...one.inside]).flatMap((one) => one.fields.map((field) => ({ ...field, in: one.key })));
    const without = all.filter((one) => one.kind === '' && one.words.length === 0).map((one) => one.key);
    expect([...new Set(without)].sort()).toEqual(['currency', 'idler', 'name', 'roll', 'title', 'web']);
    expect(all.find((one) => one.in === 'line' && one.key === 'top_speed')).toMatchObject({ kind: 'speed', required: true, range: 'Above 0 m/min, at most 3000 m/min' });
    expect(all.find((one) => one.in === 'brake' && one.key === 'pairs')?.kind).toBe('count');
    expect(all.find((one) => one.in === 'web' && one.key === 'caliper')?.kind).toBe('caliper');
  });
  it('parts help from range', () => {
    expect(splitHelp('of the disc; the default is cast iron. 100 J/(kg*K) to 5000 J/(kg*K).')).toEqual({ help: 'of the disc; the default is cast iron', range: '100 J/(kg*K) to 5000 J/(kg*K)' });
    expect(splitHelp('heads every answer.')).toEqual({ help: 'heads every answer', range: '' });
  });
});
