import { describe, expect, it } from 'vitest';
import { parted, type ChartData } from '../src/chart/Chart';
import { chartCsv } from '../src/chart/csv';
import { layOut } from '../src/chart/layout';
import { ticks, tickWords } from '../src/chart/scale';

const data: ChartData = {
  title: 'Pressure',
  x: { name: 'roll diameter', kind: 'short_length', values: [0.2, 0.6, 1] },
  y: { name: 'pressure', kind: 'pressure' },
  series: [
    { name: 'a', role: 'main', values: [1e5, null, 3e5] },
    { name: 'by hand', role: 'second', at: [0.2, 1], values: [2e5, 2e5] },
    { name: 'most', role: 'limit', side: 'above', values: [4e5, 4e5, 4e5] },
  ],
};

describe('ticks', () => {
  it('are round, cover the range and are told apart', () => {
    expect(ticks(0, 442)).toEqual([0, 100, 200, 300, 400, 500]);
    expect(tickWords(ticks(0, 1, 4))).toEqual(['0.00', '0.25', '0.50', '0.75', '1.00']);
    expect(tickWords([-5, 0, 5])).toEqual(['−5', '0', '5']);
  });
});

describe('a chart', () => {
  it('breaks a line where there is no value, and hatches the forbidden side', () => {
    const laid = layOut(data, 'si', 720, 340);
    expect(laid.lines[0]!.path.match(/M/g)).toHaveLength(2);
    expect(laid.lines[2]!.area).toMatch(/Z$/);
    expect(laid.lines[0]!.area).toBe('');
  });
  it('never lets one name cover another', () => {
    const same = { ...data, series: ['a', 'b', 'c'].map((name) => ({ name, role: 'main' as const, values: [1e5, 1e5, 1e5] })) };
    const places = layOut(same, 'si', 720, 340).labels.map((one) => one.at).sort((a, b) => a - b);
    expect(places[1]! - places[0]!).toBeGreaterThanOrEqual(16);
    expect(places[2]! - places[1]!).toBeGreaterThanOrEqual(16);
  });
  it('gives its numbers in the reader’s units, a line with its own places apart', () => {
    expect(parted(data).map((one) => one.title)).toEqual(['Pressure', 'Pressure, by hand']);
    expect(chartCsv(data, 'si')).toBe('roll diameter [mm],a [bar],most [bar]\r\n200,1,4\r\n600,,4\r\n1000,3,4\r\n\r\nroll diameter [mm],by hand [bar]\r\n200,2\r\n1000,2\r\n');
  });
});

