/**
 * What of the drawing moves: texts of paths and numbers for a state of the run. Pure, so that a frame costs a few
 * strings and no layout.
 */
import { leaves_at, meets_at, type Point } from './path';
import { to_sheet, type Sheet } from './sheet';

const n = (value: number) => value.toFixed(1);
const put = (p: Point) => `${n(p.x)} ${n(p.y)}`;

/** A spiral of `turns` turns from the core to the full roll, as far as a radius, around the origin [px]. */
export function spiral(core: number, full: number, turns: number, radius = full): string {
  const steps = 28 * turns;
  const last = Math.floor(steps * Math.min(1, Math.max(0, (radius - core) / (full - core))));
  let d = '';
  for (let i = 0; i <= last; ++i) {
    const r = core + ((full - core) * i) / steps;
    const a = (2 * Math.PI * turns * i) / steps;
    d += `${i ? 'L' : 'M'}${n(r * Math.cos(a))} ${n(r * Math.sin(a))}`;
  }
  return d;
}

/** How deep a web hangs that is longer than its straight span by `slack`: a flat arc, s ≈ 8 h²/(3 l). */
export const sag_of = (length: number, slack: number) => Math.sqrt((3 * length * Math.max(0, slack)) / 8);

export interface WebState { radius: number; slack: number; broken: boolean; dancer: number }

/** The web behind the first span; a dancer that is `shift` metres along its way takes its two strands with it. */
function rest_of(sheet: Sheet, shift: number): string {
  const { path, scale } = sheet;
  let d = '';
  path.bends.forEach((bend, i) => {
    const isDancer = bend.part === 'dancer';
    const by = isDancer ? shift : 0;
    const moved = (p: Point) => to_sheet(sheet, { x: p.x + by * Math.cos(bend.heading), y: p.y + by * Math.sin(bend.heading) });
    const next = path.legs[i + 1]!;
    const r = n(bend.radius * scale);
    if (isDancer || i > 0) d += ` L ${put(moved(path.legs[i]!.to))}`;
    d += ` A ${r} ${r} 0 ${bend.wrap > Math.PI ? 1 : 0} ${bend.left ? 0 : 1} ${put(moved(next.from))}`;
    if (isDancer) d += ` L ${put(to_sheet(sheet, next.from))}`;
  });
  return `${d} L ${put(to_sheet(sheet, path.legs.at(-1)!.to))}`;
}

/** The first span when the web has parted in it: two ends that hang. */
function parted(a: Point, b: Point, drop: number): string {
  const along = (t: number): Point => ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) + drop });
  const near = along(0.3), far = along(0.72);
  const knee = (p: Point, q: Point) => ({ x: p.x + 0.75 * (q.x - p.x), y: p.y + 0.1 * (q.y - p.y) });
  return `M ${put(a)} Q ${put(knee(a, near))} ${put(near)} M ${put(far)} Q ${put(knee(b, far))} ${put(b)}`;
}

/** Where on the first span its number points, whatever the web does. */
export function web_point(sheet: Sheet, state: WebState, t: number): Point {
  const start = leaves_at(sheet.path, state.radius), end = meets_at(sheet.path, state.radius);
  const a = to_sheet(sheet, start), b = to_sheet(sheet, end);
  const length = Math.hypot(end.x - start.x, end.y - start.y);
  const room = Math.max(0, sheet.floor - 4 - (a.y + b.y) / 2);
  const depth = state.broken ? 0 : Math.min(room, sag_of(length, state.slack) * sheet.scale);
  return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) + 4 * depth * t * (1 - t) };
}

/** The whole web as the data of a path element. Slack hangs in the first span; a broken one is parted there. */
export function web_path(sheet: Sheet, state: WebState): string {
  const start = leaves_at(sheet.path, state.radius);
  const end = meets_at(sheet.path, state.radius);
  const a = to_sheet(sheet, start), b = to_sheet(sheet, end);
  const length = Math.hypot(end.x - start.x, end.y - start.y);
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const room = Math.max(0, sheet.floor - 4 - middle.y);
  const rest = rest_of(sheet, state.dancer);
  if (state.broken) return parted(a, b, Math.min(room, 0.32 * length * sheet.scale)) + rest;
  const depth = Math.min(room, sag_of(length, state.slack) * sheet.scale);
  if (depth < 0.3) return `M ${put(a)} L ${put(b)}${rest}`;
  return `M ${put(a)} Q ${put({ x: middle.x, y: middle.y + 2 * depth })} ${put(b)}${rest}`;
}

/** Where a pad pair sits around the disc, and how far it stands off when it is released [rad]. */
export function pair_angles(pairs: number): number[] {
  const step = (2 * Math.PI) / Math.max(pairs, 1);
  return Array.from({ length: pairs }, (_, i) => Math.PI / 2 + step / 2 + i * step);
}

/** Share of the way from the air around to the rating, 0 … 1. */
export function heat_share(disc: number, ambient: number | undefined, rated: number | undefined): number {
  const from = ambient ?? 293.15, to = rated ?? from + 230;
  return Math.min(1, Math.max(0, (disc - from) / Math.max(1, to - from)));
}

/** The state of a disc in a word, so that its colour is never alone. */
export function heat_word(share: number): string {
  return share < 0.15 ? 'cool' : share < 0.45 ? 'warm' : share < 0.8 ? 'hot' : share < 1 ? 'very hot' : 'over its rating';
}
