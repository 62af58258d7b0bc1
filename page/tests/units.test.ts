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
  const amount = (value: number, unit: string, kind: string) => ({ value, unit, kind });
  const note = {
    text: 'slip power 1987 W above 1465 W at 1000 mm; pad life 463 h below 500 h',
    pattern: 'slip power {0} above {1} at {2}; pad life {3} below {4}',
    amounts: [amount(1987.1, 'W', 'power'), amount(1464.68, 'W', 'power'), amount(1, 'm', 'short_length'), amount(463 * 3600, 's', 'running_time'), amount(500 * 3600, 's', 'running_time')],
  };
  it('is the core’s own text in SI, and the same sentence in US units', () => {
    expect(noteText(note, 'si')).toBe(note.text);
    expect(plain(noteText(note, 'us'))).toBe('slip power 2.66 hp above 1.96 hp at 39.4 in; pad life 463 h below 500 h');
  });
  it('puts each amount at its place, whatever the order, as often as it stands there', () => {
    const window = { text: 'The tension lies above the window of 40.6 N to 49.6 N; inside is 0.100 % likely. Then 49.6 N.', pattern: 'The tension lies above the window of {2} to {1}; inside is {0} likely. Then {1}.', amounts: [amount(0.001, '1', 'ratio'), amount(49.61, 'N', 'force'), amount(40.59, 'N', 'force')] };
    expect(plain(noteText(window, 'us'))).toBe('The tension lies above the window of 9.12 lbf to 11.2 lbf; inside is 0.100 % likely. Then 11.2 lbf.');
  });
  it('shows what two kinds share by its own: neither text nor unit could tell', () => {
    const told = { text: '1.00 bar of air, 1.23 % of strain, 10.0 m of web, a disc at 100 °C that is 10.0 K hotter', pattern: '{0} of air, {1} of strain, {2} of web, a disc at {3} that is {4} hotter', amounts: [amount(1e5, 'Pa', 'pressure'), amount(0.0123, '1', 'ratio'), amount(10, 'm', 'web_length'), amount(373.15, 'K', 'temperature'), amount(10, 'K', 'temperature_difference')] };
    expect(plain(noteText(told, 'us'))).toBe('14.5 psi of air, 1.23 % of strain, 32.8 ft of web, a disc at 212 °F that is 18.0 °F hotter');
  });
  it('leaves a number of the sentence that is no amount, and a brace that names none', () => {
    const named = { text: 'job “10.0 mm {7} {a} {} 10.0 mm” by 10.0 mm', pattern: 'job “{0} {7} {a} {} 10.0 mm” by {0}', amounts: [amount(0.01, 'm', 'short_length')] };
    expect(plain(noteText(named, 'us'))).toBe('job “0.394 in {7} {a} {} 10.0 mm” by 0.394 in');
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
