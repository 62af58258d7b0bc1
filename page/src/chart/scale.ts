// Round ticks, and places on paper.

/** Ticks at 1, 2, 2.5 or 5 times a power of ten that cover [low, high]. */
export function ticks(low: number, high: number, about = 6): number[] {
  const span = high - low || Math.abs(high) || 1;
  const rough = span / about;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 2.5, 5, 10].map((one) => one * power).find((one) => one >= rough) ?? 10 * power;
  const from = Math.floor(low / step + 1e-9);
  const to = Math.ceil(high / step - 1e-9);
  return Array.from({ length: to - from + 1 }, (_, i) => (from + i) * step);
}

/** All ticks with the digits that tell them apart. */
export function tickWords(values: number[]): string[] {
  const step = Math.abs((values[1] ?? 1) - (values[0] ?? 0)) || 1;
  const digits = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9 + (Math.abs(step / 10 ** Math.floor(Math.log10(step)) - 2.5) < 1e-6 ? 1 : 0)));
  return values.map((one) => one.toFixed(Math.min(8, digits)).replace('-', '−'));
}

export interface Scale {
  (value: number): number;
  low: number;
  high: number;
}

export function scale(low: number, high: number, from: number, to: number): Scale {
  const span = high - low || 1;
  return Object.assign((value: number) => from + ((value - low) / span) * (to - from), { low, high });
}
