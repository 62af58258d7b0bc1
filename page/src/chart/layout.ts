// Where everything of a chart goes.
import { inUnits, type Units } from '../units';
import type { ChartData, Series } from './Chart';
import { scale, ticks, tickWords } from './scale';

export interface Laid {
  box: { left: number; right: number; top: number; bottom: number };
  xTicks: { at: number; word: string }[];
  yTicks: { at: number; word: string }[];
  lines: { name: string; role: Series['role']; path: string; area: string; points?: { x: number; y: number }[] }[];
  labels: { name: string; role: Series['role']; at: number }[];
  nearest(x: number): number;
  xAt(index: number): number;
}

const labelRoom = 168;

export function layOut(data: ChartData, units: Units, width: number, height: number): Laid {
  const box = { left: 62, right: width - labelRoom, top: 30, bottom: height - 50 };
  const xs = data.x.values.map((x) => inUnits(x, data.x.kind, units));
  const columns = data.series.map((one) => one.values.map((y) => (y === null ? null : inUnits(y, data.y.kind, units))));
  // A limit far above everything would press the rest flat: it may take up to twice the room of what it limits.
  const range = (series: boolean) => columns.flatMap((column, i) => ((data.series[i]!.role === 'limit') === series ? column.filter((y): y is number => y !== null) : []));
  const values = range(false);
  const limits = range(true);
  const highest = Math.max(...(values.length > 0 ? values : limits), 0.0001);
  const lowest = Math.min(...(values.length > 0 ? values : limits));
  const near = limits.filter((y) => y <= highest * 2.2);
  const base = lowest > 0.4 * highest && data.y.kind === 'temperature' ? lowest : Math.min(0, lowest);
  const yTicks = ticks(base, Math.max(highest * 1.04, ...near.map((y) => y * 1.06)));
  const xTicks = ticks(Math.min(...xs), Math.max(...xs), 7).filter((x) => x >= Math.min(...xs) - 1e-9 && x <= Math.max(...xs) + 1e-9);
  const x = scale(Math.min(...xs), Math.max(...xs), box.left, box.right);
  const y = scale(yTicks[0]!, yTicks[yTicks.length - 1]!, box.bottom, box.top);
  const xWords = tickWords(xTicks);
  const yWords = tickWords(yTicks);
  return {
    box,
    xTicks: xTicks.map((value, i) => ({ at: x(value), word: xWords[i]! })),
    yTicks: yTicks.map((value, i) => ({ at: y(value), word: yWords[i]! })),
    lines: data.series.map((one, i) => {
      const own = one.at?.map((value) => inUnits(value, data.x.kind, units)) ?? xs;
      const points = one.marks && own.flatMap((at, k) => (columns[i]![k] === null || columns[i]![k] === undefined ? [] : [{ x: round(x(at)), y: round(y(columns[i]![k]!)) }]));
      const path = !points ? pathOf(own, columns[i]!, x, y) : one.marks === 'stems' ? points.map((each) => `M${each.x} ${box.bottom}V${each.y}`).join('') : '';
      const edge = one.side === 'below' ? box.bottom : box.top;
      const area = one.role === 'limit' && one.side && path ? `${path}L${box.right} ${edge}H${box.left}Z` : '';
      return { name: one.name, role: one.role, path, area, ...(points ? { points } : {}) };
    }),
    labels: spread(data.series.map((one, i) => ({ name: one.name, role: one.role, at: endOf(columns[i]!, y, box) })), box.top, box.bottom),
    nearest: (at) => xs.reduce((best, value, i) => (Math.abs(x(value) - at) < Math.abs(x(xs[best]!) - at) ? i : best), 0),
    xAt: (index) => x(xs[index] ?? 0),
  };
}

const round = (value: number): number => Math.round(value * 100) / 100;

function pathOf(xs: number[], ys: (number | null)[], x: (v: number) => number, y: (v: number) => number): string {
  let pen = 'M';
  let path = '';
  ys.forEach((value, i) => {
    if (value === null) {
      pen = 'M';
      return;
    }
    path += `${pen}${x(xs[i]!).toFixed(2)} ${y(value).toFixed(2)}`;
    pen = 'L';
  });
  return path;
}

const endOf = (ys: (number | null)[], y: (v: number) => number, box: Laid['box']): number => {
  const last = [...ys].reverse().find((one) => one !== null);
  return Math.min(box.bottom, Math.max(box.top, y(last ?? 0)));
};

/** Names at line ends, moved apart so that none covers another. */
function spread<T extends { at: number }>(labels: T[], top: number, bottom: number): T[] {
  const gap = 17;
  const sorted = [...labels].sort((a, b) => a.at - b.at);
  let at = -Infinity;
  for (const one of sorted) at = one.at = Math.max(one.at, at + gap);
  let below = bottom + 4;
  for (const one of [...sorted].reverse()) below = (one.at = Math.min(one.at, below)) - gap;
  for (const one of sorted) one.at = Math.max(one.at, top);
  return sorted;
}
