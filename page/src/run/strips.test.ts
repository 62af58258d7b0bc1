import { describe, expect, it } from 'vitest';
import { example_state } from '../drawing/example';
import { Strips } from './strips';

const at = (time: number, more: Record<string, unknown> = {}) => example_state({ time, ...more });

describe('strips', () => {
  it('keep the lowest and highest tension of a look, not only its last', () => {
    const strips = new Strips(16);
    strips.add(at(0));
    strips.add(at(1, { tension: 88, lowest_tension: 0, highest_tension: 140 }));
    expect(strips.extremes('tension', 0, 1)).toEqual([0, 140]);
  });

  it('lose no extreme when rows are merged, however often', () => {
    const strips = new Strips(64);
    for (let i = 0; i <= 5000; ++i)
      strips.add(at(i * 0.1, { lowest_tension: i === 37 ? -5 : 80, highest_tension: i === 4321 ? 500 : 95, slack: i === 12 ? 0.4 : 0 }));
    expect(strips.count).toBeLessThanOrEqual(64);
    expect(strips.extremes('tension', 0, 501)).toEqual([-5, 500]);
    expect(strips.extremes('slack', 0, 501)).toEqual([0, 0.4]);
    expect(strips.from[0]).toBe(0);
    expect(strips.end).toBeCloseTo(500, 9);
    for (let i = 1; i < strips.count; ++i) expect(strips.from[i]).toBe(strips.to[i - 1]);
  });

  it('lose no extreme when drawn by columns', () => {
    const strips = new Strips(4096);
    for (let i = 0; i <= 2000; ++i) strips.add(at(i * 0.05, { lowest_tension: i === 777 ? 1 : 80, highest_tension: i === 1500 ? 300 : 95 }));
    for (const width of [7, 100, 999]) {
      const { lo, hi } = strips.columns('tension', 0, 100, width);
      expect(Math.min(...lo)).toBe(1);
      expect(Math.max(...hi)).toBe(300);
    }
  });

  it('leave columns empty where nothing was run, and fill all that a long row spans', () => {
    const strips = new Strips(16);
    strips.add(at(0)); strips.add(at(5)); strips.add(at(6));
    const { hi } = strips.columns('tension', 0, 10, 10);
    expect([...hi].map(Number.isNaN)).toEqual([false, false, false, false, false, false, false, true, true, true]);
  });

  it('widen the last row for a look at the same moment', () => {
    const strips = new Strips(16);
    strips.add(at(1)); strips.add(at(1, { set_pressure: 5e5 }));
    expect(strips.count).toBe(1);
    expect(strips.extremes('set_pressure', 0, 2)).toEqual([3.1e5, 5e5]);
  });
});
