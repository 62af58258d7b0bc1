import { describe, expect, it } from 'vitest';
import { example, example_check, example_state } from './example';
import { mover } from './mover';
import { heat_word, sag_of, web_path } from './moving';
import type { Drawing } from './parts';
import { make_sheet } from './sheet';
import { drawn_stand } from './stand';

const stand = drawn_stand(example, example_check, 'clear film');
const sheet = make_sheet(stand, 1000, 'si');
const d: Drawing = { stand, sheet, units: 'si', id: 't', selected: undefined, press: undefined, hold: () => () => undefined };

function moved() {
  const writes: string[] = [];
  const values = new Map<string, string>();
  const element = (key: string) => ({
    setAttribute: (name: string, value: string) => { writes.push(`${key} ${name}`); values.set(`${key} ${name}`, value); },
    set textContent(value: string) { writes.push(`${key} text`); values.set(`${key} text`, value); },
  });
  const keys = ['roll', 'spiral', 'turning', 'web', 'dancer', 'tension.0', 'tension.1', 'air.0', 'disc.0', 'disc.1', 'true:pair:0', 'true:pair:3', 'full.0', 'large:disc'];
  const move = mover(d, new Map(keys.map((key) => [key, element(key) as unknown as SVGElement])));
  return { move, writes, values };
}

describe('a moving drawing', () => {
  it('shrinks the roll to scale and turns it', () => {
    const { move, values } = moved();
    move(example_state({ diameter: 0.4, angle: Math.PI / 2 }));
    expect(Number(values.get('roll r')) / sheet.scale).toBeCloseTo(0.2, 3);
    expect(values.get('turning transform')).toBe('rotate(90.0)');
    expect(values.get('full.0 text')).toBe('Ø 400 mm');
  });

  it('writes nothing twice', () => {
    const { move, writes } = moved();
    move(example_state());
    const before = writes.length;
    move(example_state());
    expect(writes.length).toBe(before);
    move(example_state({ angle: 2 }));
    expect(writes.slice(before)).toEqual(['turning transform']);
  });

  it('leaves texts alone where they are not asked for', () => {
    const { move, values } = moved();
    move(example_state({ tension: 50 }), false);
    expect(values.get('tension.0 text')).toBeUndefined();
    move(example_state({ tension: 50 }));
    expect(values.get('tension.0 text')).toBe('50.0 N');
  });

  it('tells released pairs, heat, slack and a parted web by shape and word', () => {
    const { move, values } = moved();
    move(example_state({ pairs: 2, disc: 420, slack: 0.012 }));
    expect(values.get('true:pair:0 class')).toContain('is-engaged');
    expect(values.get('true:pair:3 class')).toContain('is-released');
    expect(values.get('disc.0 text')).toBe('147 °C, hot');
    expect(values.get('disc.1 text')).toBe('2 of 4 pairs engaged');
    expect(values.get('tension.1 text')).toBe('slack 12.0 mm');
    move(example_state({ broken: true }));
    expect(values.get('tension.1 text')).toBe('web parted');
    expect(values.get('web class')).toContain('is-broken');
  });

  it('moves the dancer by its place', () => {
    const { move, values } = moved();
    move(example_state({ dancer: 0.5 }));
    expect(Number(/translate\(([-\d.]+)/.exec(values.get('dancer transform')!)![1]) / sheet.scale).toBeCloseTo(0.055, 3);
  });

  it('passes over a state that is none', () => {
    const { move, writes } = moved();
    for (const bad of [undefined, null, {}, { diameter: NaN }]) move(bad);
    expect(writes).toEqual([]);
  });
});

describe('the web', () => {
  const state = { radius: 0.32, slack: 0, broken: false, dancer: 0 };
  it('is straight when taut, hangs when slack, has two pieces when parted', () => {
    expect(web_path(sheet, state)).not.toContain('Q');
    expect(web_path(sheet, { ...state, slack: 0.05 })).toContain('Q');
    expect(web_path(sheet, { ...state, broken: true }).match(/M/g)).toHaveLength(2);
  });

  it('hangs as deep as a flat arc of its length does', () => {
    // Flat parabola, s = 8 h²/(3 l): 2 m with 12 mm over hang 94.9 mm deep.
    expect(sag_of(2, 0.012)).toBeCloseTo(Math.sqrt((3 * 2 * 0.012) / 8), 12);
    expect(sag_of(2, -1)).toBe(0);
  });

  it('has numbers alone in its path', () => {
    for (const slack of [0, 1e-9, 0.3, 50, 1e6]) expect(web_path(sheet, { ...state, slack })).not.toMatch(/NaN|Infinity|undefined/);
  });
});

it('calls heat by words that rise', () => {
  expect([0, 0.3, 0.6, 0.9, 1].map(heat_word)).toEqual(['cool', 'warm', 'hot', 'very hot', 'over its rating']);
});
