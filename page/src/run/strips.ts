/**
 * What a run showed, row by row, for the strips and for CSV. Every row keeps the lowest and highest of the time that it
 * stands for; when there are too many rows the older half is merged pair by pair, so that an extreme is never lost, only
 * the moment of it is known less sharply.
 */
export const channels = [
  'tension', 'setpoint', 'low', 'high', 'slack', 'set_pressure', 'pressure', 'line_speed', 'rim_speed', 'slip_power', 'disc', 'diameter',
] as const;
export type Channel = (typeof channels)[number];

/** Lowest and highest by pixel column; columns without a row are NaN. */
export interface Columns { lo: Float64Array; hi: Float64Array }

export class Strips {
  count = 0;
  readonly from: Float64Array;  // [s]
  readonly to: Float64Array;    // [s]
  readonly lo = {} as Record<Channel, Float64Array>;
  readonly hi = {} as Record<Channel, Float64Array>;

  constructor(readonly capacity = 32768) {
    this.from = new Float64Array(capacity);
    this.to = new Float64Array(capacity);
    for (const channel of channels) {
      this.lo[channel] = new Float64Array(capacity);
      this.hi[channel] = new Float64Array(capacity);
    }
  }

  get end(): number { return this.count > 0 ? this.to[this.count - 1]! : 0; }

  /** Takes a state of the run. One that is no later than the last only widens the last row. */
  add(state: any): void {
    const time = Number(state.time);
    if (!Number.isFinite(time)) return;
    if (this.count > 0 && time <= this.end) return this.widen(state);
    if (this.count === this.capacity) this.thin();
    const row = this.count++;
    this.from[row] = row > 0 ? this.to[row - 1]! : time;
    this.to[row] = time;
    for (const channel of channels) {
      const [lo, hi] = bounds(state, channel);
      this.lo[channel][row] = lo;
      this.hi[channel][row] = hi;
    }
  }

  private widen(state: any): void {
    const row = this.count - 1;
    for (const channel of channels) {
      const [lo, hi] = bounds(state, channel);
      this.lo[channel][row] = Math.min(this.lo[channel][row]!, lo);
      this.hi[channel][row] = Math.max(this.hi[channel][row]!, hi);
    }
  }

  /** Merges the older half by pairs. */
  private thin(): void {
    const half = this.count >> 1;
    const pairs = half >> 1;
    const merge = (from: Float64Array, pick: (a: number, b: number) => number) => {
      for (let i = 0; i < pairs; ++i) from[i] = pick(from[2 * i]!, from[2 * i + 1]!);
      from.copyWithin(pairs, 2 * pairs, this.count);
    };
    merge(this.from, (a) => a);
    merge(this.to, (_, b) => b);
    for (const channel of channels) {
      merge(this.lo[channel], Math.min);
      merge(this.hi[channel], Math.max);
    }
    this.count -= pairs;
  }

  /** The first row that ends after a time. */
  row_after(time: number): number {
    let [low, high] = [0, this.count];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.to[middle]! > time) high = middle; else low = middle + 1;
    }
    return low;
  }

  /**
   * A channel over a time, by columns; a row that spans several columns fills them all. `into` is filled again where it
   * has that width: sixty drawings a second leave nothing to be swept up.
   */
  columns(channel: Channel, begin: number, end: number, width: number, into?: Columns): Columns {
    const out = into?.lo.length === width ? into : { lo: new Float64Array(width), hi: new Float64Array(width) };
    out.lo.fill(NaN);
    out.hi.fill(NaN);
    const lo = this.lo[channel], hi = this.hi[channel];
    const per = width / Math.max(1e-9, end - begin);
    for (let row = this.row_after(begin - 1e-9); row < this.count && this.from[row]! <= end; ++row) {
      const first = Math.max(0, Math.floor((this.from[row]! - begin) * per));
      const last = Math.min(width - 1, Math.floor((this.to[row]! - begin) * per));
      for (let x = first; x <= last; ++x) {
        if (!(out.lo[x]! <= lo[row]!)) out.lo[x] = lo[row]!;
        if (!(out.hi[x]! >= hi[row]!)) out.hi[x] = hi[row]!;
      }
    }
    return out;
  }

  /** Lowest and highest of a channel over a time; nothing where there are no rows. */
  extremes(channel: Channel, begin: number, end: number): [number, number] | undefined {
    let found: [number, number] | undefined;
    for (let row = this.row_after(begin - 1e-9); row < this.count && this.from[row]! <= end; ++row) {
      const lo = this.lo[channel][row]!, hi = this.hi[channel][row]!;
      if (!found) found = [lo, hi];
      if (lo < found[0]) found[0] = lo;
      if (hi > found[1]) found[1] = hi;
    }
    return found;
  }
}

function bounds(state: any, channel: Channel): [number, number] {
  const value = Number(state[channel] ?? 0);
  if (channel === 'slack') return [value, Math.max(value, state.highest_slack ?? value)];
  if (channel !== 'tension') return [value, value];
  return [Math.min(value, state.lowest_tension ?? value), Math.max(value, state.highest_tension ?? value)];
}
