/** Six strips over one time: tension in its window, slack, pressure, speed, slip power, temperature. */
import { in_unit, readable, show, unit_of, type Units } from '../drawing/quantity';
import type { Happening } from './events';
import { clock_text } from './events';
import type { Pen } from './pen';
import type { Channel, Columns, Strips } from './strips';

export interface Palette { ink: string; soft: string; grid: string; hatch: string; paper: string; main: string; second: string; bad: string }
export const palettes: Record<'light' | 'dark', Palette> = {
  light: { ink: '#17242d', soft: '#4a5a66', grid: '#dfe4e6', hatch: '#b9c4ca', paper: '#ffffff', main: '#0b5c8f', second: '#7d5200', bad: '#a3193c' },
  dark: { ink: '#e4ebef', soft: '#abb8c1', grid: '#2a3640', hatch: '#46545f', paper: '#151e25', main: '#6cc0f2', second: '#f0bd5a', bad: '#ff9db5' },
};

interface Trace { channel: Channel; label: string; second?: boolean }
interface StripKind { name: string; kind: string; share: number; traces: Trace[]; zero: boolean; least: number }
export const strip_kinds: StripKind[] = [
  { name: 'tension', kind: 'force', share: 2.3, zero: true, least: 1, traces: [{ channel: 'tension', label: 'tension' }] },
  { name: 'slack', kind: 'short_length', share: 0.75, zero: true, least: 0.01, traces: [{ channel: 'slack', label: 'slack' }] },
  { name: 'pressure', kind: 'pressure', share: 1.15, zero: true, least: 1e5,
    traces: [{ channel: 'set_pressure', label: 'asked', second: true }, { channel: 'pressure', label: 'at brake' }] },
  { name: 'speed', kind: 'speed', share: 1.15, zero: true, least: 0.2,
    traces: [{ channel: 'line_speed', label: 'line', second: true }, { channel: 'rim_speed', label: 'roll surface' }] },
  { name: 'slip power', kind: 'power', share: 0.9, zero: true, least: 10, traces: [{ channel: 'slip_power', label: 'into brake' }] },
  { name: 'temperature', kind: 'temperature', share: 0.9, zero: false, least: 10, traces: [{ channel: 'disc', label: 'disc' }] },
];

/** Steps of a clock: people count seconds and minutes by sixties. */
export function time_ticks(begin: number, end: number, wanted: number): number[] {
  const steps = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400, 43200, 86400];
  const step = steps.find((one) => (end - begin) / one <= wanted) ?? 86400;
  const out: number[] = [];
  for (let i = Math.ceil(begin / step - 1e-9) + 0; i * step <= end + 1e-9; ++i) if (i >= 0) out.push(i * step);
  return out;
}

export interface View { begin: number; end: number }
export interface Range { low: number; high: number }

/** A step of 1, 2 or 5 and the marks that it makes between two ends. */
export function ticks(low: number, high: number, wanted: number): number[] {
  const raw = (high - low) / Math.max(1, wanted);
  if (!(raw > 0) || !Number.isFinite(raw)) return [];
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].find((one) => one * power >= raw * 0.999)! * power;
  const out: number[] = [];
  for (let i = Math.ceil(low / step - 1e-9) + 0; i * step <= high + 1e-9 * step; ++i) out.push(i * step);
  return out;
}

/** The span that a strip shows for several runs, so that they can be compared by eye. In SI. */
export function strip_range(kind: StripKind, all: Strips[], view: View): Range {
  let low = Infinity, high = -Infinity;
  const take = (channel: Channel) => {
    for (const strips of all) {
      const found = strips.extremes(channel, view.begin, view.end);
      if (!found) continue;
      low = Math.min(low, found[0]);
      high = Math.max(high, found[1]);
    }
  };
  for (const trace of kind.traces) take(trace.channel);
  if (kind.name === 'tension') take('high');
  if (!Number.isFinite(low)) [low, high] = [0, kind.least];
  if (kind.zero) low = Math.min(0, low);
  const span = Math.max(kind.least, high - low);
  return { low: kind.zero ? low : low - 0.1 * span, high: low + 1.12 * span };
}

const margin = { left: 62, right: 118, top: 34, bottom: 24 };
const gap = 20;

/** Draws all strips of one run into a box from the origin. Ranges may be those of two runs together. */
export function draw_strips(pen: Pen, size: { width: number; height: number }, strips: Strips, ranges: Range[], view: View,
  units: Units, ink: Palette, happenings: Happening[]): void {
  const w = Math.max(40, Math.floor(size.width - margin.left - margin.right));
  const room = size.height - margin.top - margin.bottom - gap * (strip_kinds.length - 1);
  const shares = strip_kinds.reduce((sum, one) => sum + one.share, 0);
  pen.rect(0, 0, size.width, size.height, ink.paper);
  const at = (time: number) => margin.left + ((time - view.begin) / (view.end - view.begin)) * w;
  const seconds = time_ticks(view.begin, view.end, Math.max(2, w / 90));
  let y = margin.top;
  strip_kinds.forEach((kind, i) => {
    const h = (room * kind.share) / shares;
    one_strip(pen, kind, { x: margin.left, y, w, h }, strips, ranges[i]!, view, units, ink, seconds.map(at));
    y += h + gap;
  });
  for (const time of seconds) pen.text(at(time), size.height - 8, clock_text(time).replace(/\.0$/, ''), 'middle', ink.soft);
  marks(pen, happenings, view, at, size.height, ink);
}

/** Events as lines over all strips, each with a word where there is room. */
function marks(pen: Pen, happenings: Happening[], view: View, at: (time: number) => number, height: number, ink: Palette): void {
  let free = -Infinity;
  for (const one of happenings) {
    if (one.time < view.begin || one.time > view.end) continue;
    const x = Math.round(at(one.time)) + 0.5;
    pen.line([x, margin.top, x, height - margin.bottom], { colour: one.loud ? ink.bad : ink.soft, dash: one.loud ? [] : [2, 3] });
    if (x < free) continue;
    pen.text(x + 3, 12, one.mark, 'start', one.loud ? ink.bad : ink.soft);
    free = x + 3 + one.mark.length * 6.6 + 8;
  }
}

/** Columns that are used again with every drawing. */
const scratch: (Columns | undefined)[] = [];
function filled(slot: number, strips: Strips, channel: Channel, view: View, width: number): Columns {
  const made = strips.columns(channel, view.begin, view.end, width, scratch[slot]);
  scratch[slot] = made;
  return made;
}

interface Box { x: number; y: number; w: number; h: number }

function one_strip(pen: Pen, kind: StripKind, box: Box, strips: Strips, range: Range, view: View, units: Units, ink: Palette, columns: number[]): void {
  const place = (value: number) => box.y + box.h - ((value - range.low) / (range.high - range.low || 1)) * box.h;
  const inside = (y: number) => Math.min(box.y + box.h, Math.max(box.y, y));
  const mapped = (values: Float64Array) => {
    for (let i = 0; i < values.length; ++i) values[i] = inside(place(values[i]!)); // NaN stays NaN
    return values;
  };
  for (const x of columns) pen.line([x, box.y, x, box.y + box.h], { colour: ink.grid });
  const shown = [in_unit(range.low, kind.kind, units), in_unit(range.high, kind.kind, units)];
  for (const tick of ticks(shown[0]!, shown[1]!, box.h > 70 ? 4 : 2)) {
    const y = box.y + box.h - ((tick - shown[0]!) / (shown[1]! - shown[0]!)) * box.h;
    pen.line([box.x, y, box.x + box.w, y], { colour: ink.grid });
    pen.text(box.x - 6, y + 4, readable(Number(tick.toPrecision(6))).replace(/\.0+$/, '').replace(/(\.\d*?)0+$/, '$1'), 'end', ink.soft);
  }
  if (kind.name === 'tension') tension_window(pen, box, strips, view, mapped, ink);
  const labels: { y: number; text: string; second: boolean }[] = [];
  for (const trace of kind.traces) {
    const cols = filled(0, strips, trace.channel, view, box.w);
    const wide = kind.name === 'tension';
    const hi = mapped(cols.hi), lo = wide ? mapped(cols.lo) : hi;
    if (trace.second) pen.line(steps(box.x, hi), { colour: ink.second, width: 1.4, dash: [5, 3] });
    else {
      if (wide) pen.band(box.x, lo, hi, ink.main, 0.55);
      pen.line(steps(box.x, hi), { colour: ink.main, width: 1.3 });
      if (wide) pen.line(steps(box.x, lo), { colour: ink.main, width: 1.3 });
    }
    const last = strips.count - 1;
    if (last >= 0) {
      const value = strips.hi[trace.channel][last]!;
      labels.push({ y: inside(place(value)), text: kind.traces.length > 1 ? `${trace.label} ${short(value, kind.kind, units)}` : show(value, kind.kind, units), second: trace.second === true });
    }
  }
  pen.line([box.x, box.y, box.x, box.y + box.h, box.x + box.w, box.y + box.h], { colour: ink.soft });
  const unit = unit_of(kind.kind, units);
  pen.text(box.x, box.y - 5, unit ? `${kind.name} [${unit}]` : kind.name, 'start', ink.ink, true);
  apart(labels, box, 13);
  for (const one of labels) pen.text(box.x + box.w + 6, one.y + 4, one.text, 'start', one.second ? ink.second : ink.main, true);
}

const short = (value: number, kind: string, units: Units) => readable(in_unit(value, kind, units));

/** Labels that would lie on each other are moved apart. */
function apart(labels: { y: number }[], box: Box, least: number): void {
  labels.sort((a, b) => a.y - b.y);
  for (let i = 1; i < labels.length; ++i) labels[i]!.y = Math.max(labels[i]!.y, labels[i - 1]!.y + least);
  const over = labels.length > 0 ? labels.at(-1)!.y - (box.y + box.h) : 0;
  if (over > 0) for (const one of labels) one.y -= over;
}

/** A line through the middles of columns; columns on one level are one stretch. */
function steps(x: number, ys: Float64Array): number[] {
  const points: number[] = [];
  for (let i = 0; i < ys.length; ++i) {
    const y = Math.round(ys[i]! * 4) / 4;
    const flat = i > 0 && i + 1 < ys.length && Math.abs(ys[i - 1]! - y) < 0.2 && Math.abs(ys[i + 1]! - y) < 0.2;
    if (!flat && !(Number.isNaN(y) && i > 0 && Number.isNaN(ys[i - 1]!))) points.push(x + i + 0.5, y);
  }
  return points;
}

/** What lies outside of the window is hatched; the setpoint is a thin line between. */
function tension_window(pen: Pen, box: Box, strips: Strips, view: View, mapped: (from: Float64Array) => Float64Array, ink: Palette): void {
  const low = mapped(filled(0, strips, 'low', view, box.w).lo);
  const high = mapped(filled(1, strips, 'high', view, box.w).hi);
  const set = mapped(filled(2, strips, 'setpoint', view, box.w).hi);
  // Runs of columns with the same window are hatched as one box.
  for (let i = 0; i < box.w;) {
    let k = i + 1;
    while (k < box.w && (Object.is(low[k], low[i]) && Object.is(high[k], high[i]))) ++k;
    if (!Number.isNaN(low[i]!)) {
      pen.hatch(box.x + i, box.y, k - i, high[i]! - box.y, ink.hatch);
      pen.hatch(box.x + i, low[i]!, k - i, box.y + box.h - low[i]!, ink.hatch);
    }
    i = k;
  }
  pen.line(steps(box.x, low), { colour: ink.soft });
  pen.line(steps(box.x, high), { colour: ink.soft });
  pen.line(steps(box.x, set), { colour: ink.soft, dash: [8, 3, 2, 3] });
}
