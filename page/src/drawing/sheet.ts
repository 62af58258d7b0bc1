/**
 * The sheet: where everything of the stand stands in pixels. One scale for all that the file gives a size of; labels
 * are set where they hide least. No markup here, so that tests can measure it.
 */
import { lay_path, type Path, type Point, type Turn } from './path';
import { show, size, type Units } from './quantity';
import type { DrawnStand } from './stand';

export interface Box { x: number; y: number; w: number; h: number }
export interface Label {
  key: string;
  part: string;
  lines: string[];       // the first is the number, the rest says what it is
  anchor: Point;         // where the leader ends
  box: Box;
  at: Point;             // where the leader begins
}
export interface Dimension { key: string; from: Point; to: Point; text: string; shortened: boolean }
export interface Sheet {
  width: number;
  height: number;
  scale: number;         // [px/m]
  origin: Point;         // the shaft
  floor: number;         // y of the floor
  path: Path;
  labels: Label[];
  spans: Dimension[];
  full: Dimension;       // of the roll
  air: Box;              // the regulator
  guard: Box | undefined;
  nip: { at: Point; heading: number; radius: number };
  bar: { length: number; text: string };
  dancerRadius: number;  // [m]
  detail: { at: Point; r: number; scale: number };  // the brake enlarged
  sensor: { angle: number; reach: number };         // [rad], [px] from the shaft
}

export const nip_radius = 0.06;     // [m] symbol: the file does not say
export const text_size = 13;
const line_height = 17;
const letter = 7.1;                 // mean width of a letter of that size
const title_height = 56;
const air_size = { w: 56, h: 64 };
const detail_radius = 84;           // [px]
const detail_column = 216;          // [px] left of the true-to-scale view
const sensor_angle = (132 * Math.PI) / 180;

const across = (sheet: { scale: number; origin: Point }, p: Point): Point =>
  ({ x: sheet.origin.x + p.x * sheet.scale, y: sheet.origin.y - p.y * sheet.scale });
export const to_sheet = across;

/** The turns of the path: idlers, and the dancer in the middle of the span that it hangs in. */
export function turns_of(stand: DrawnStand): { spans: number[]; turns: Turn[]; dancerRadius: number } {
  const spans = [stand.firstSpan];
  const turns: Turn[] = [];
  const mean = stand.idlers.reduce((sum, one) => sum + one.diameter, 0) / (stand.idlers.length || 1) || 0.09;
  const hang = (after: number) => {
    if (stand.dancer?.behind !== after) return;
    const span = spans.pop()!;
    spans.push(span / 2, span / 2);
    turns.push({ part: 'dancer', radius: mean / 2, wrap: Math.PI });
  };
  hang(-1);
  stand.idlers.forEach((idler, i) => {
    turns.push({ part: `idler:${i}`, radius: idler.diameter / 2, wrap: idler.wrap });
    spans.push(idler.span);
    hang(i);
  });
  return { spans, turns, dancerRadius: mean / 2 };
}

function extent(path: Path, radius: number, guard: number): [number, number, number, number] {
  const reach = Math.max(radius, guard);
  let [left, low, right, high] = [-reach, -reach, reach, reach];
  const take = (p: Point, by: number) => {
    left = Math.min(left, p.x - by); right = Math.max(right, p.x + by);
    low = Math.min(low, p.y - by); high = Math.max(high, p.y + by);
  };
  for (const leg of path.legs) { take(leg.from, 0); take(leg.to, 0); }
  for (const bend of path.bends) take(bend.centre, bend.radius);
  take(path.legs.at(-1)!.to, 2 * nip_radius);
  return [left, low, right, high];
}

/** 1, 2 or 5 times a power of ten of the reader's unit, about `wanted` pixels long. */
export function scale_bar(scale: number, units: Units, wanted = 110): { length: number; text: string } {
  const unit = units === 'si' ? 1 : 0.3048;
  const raw = wanted / scale / unit;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].reduce((best, one) => (Math.abs(one * power - raw) < Math.abs(best * power - raw) ? one : best), 1);
  const metres = step * power * unit;
  const text = units === 'si'
    ? step * power < 1 ? show(metres, 'short_length', 'si') : show(metres, 'web_length', 'si', 1)
    : step * power < 1 ? show(metres, 'short_length', 'us') : show(metres, 'web_length', 'us', 1);
  return { length: metres * scale, text };
}

// Labels ------------------------------------------------------------------------------------------------------------

interface Wanted { key: string; part: string; lines: string[]; anchor: Point; prefer: number }
interface Obstacles { circles: { at: Point; r: number; weight: number }[]; segments: { a: Point; b: Point }[]; leaders: { a: Point; b: Point }[]; boxes: Box[]; frame: Box }

function overlap(a: Box, b: Box): number {
  const w = Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x);
  const h = Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y);
  return w > 0 && h > 0 ? w * h : 0;
}
function length_inside(a: Point, b: Point, box: Box): number {
  let [t0, t1] = [0, 1];
  const clip = (p: number, d: number, low: number, high: number) => {
    if (Math.abs(d) < 1e-9) { if (p < low || p > high) t1 = -1; return; }
    const [u, v] = [(low - p) / d, (high - p) / d];
    t0 = Math.max(t0, Math.min(u, v)); t1 = Math.min(t1, Math.max(u, v));
  };
  clip(a.x, b.x - a.x, box.x, box.x + box.w);
  clip(a.y, b.y - a.y, box.y, box.y + box.h);
  return Math.max(0, t1 - t0) * Math.hypot(b.x - a.x, b.y - a.y);
}
function hidden(box: Box, o: Obstacles): number {
  let sum = 0;
  const out = box.w * box.h - overlap(box, o.frame);
  sum += 40 * out;
  for (const other of o.boxes) sum += 12 * overlap(box, other);
  for (const { a, b } of o.segments) sum += 60 * length_inside(a, b, box);
  for (const { a, b } of o.leaders) sum += 40 * length_inside(a, b, box);
  for (const { at, r, weight } of o.circles) {
    const dx = Math.max(box.x - at.x, 0, at.x - box.x - box.w);
    const dy = Math.max(box.y - at.y, 0, at.y - box.y - box.h);
    const inside = r - Math.hypot(dx, dy);
    if (inside > 0) sum += weight * (20 * inside + 400);
  }
  return sum;
}
export const width_of_text = (lines: string[]) => Math.max(...lines.map((one) => one.length)) * letter + 10;

/** Where a leader leaves its label. */
const begin_of = (box: Box, anchor: Point): Point =>
  ({ x: Math.min(box.x + box.w, Math.max(box.x, anchor.x)), y: Math.min(box.y + box.h, Math.max(box.y, anchor.y)) });

/** What a leader runs through: labels, and lines that it would be taken for. */
function crossed(a: Point, b: Point, o: Obstacles): number {
  let sum = 0;
  for (const box of o.boxes) sum += 25 * length_inside(a, b, box);
  const side = (p: Point, q: Point, r: Point) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  for (const line of [...o.segments, ...o.leaders])
    if (side(a, b, line.a) !== side(a, b, line.b) && side(line.a, line.b, a) !== side(line.a, line.b, b)) sum += 220;
  return sum;
}

function place(wanted: Wanted, o: Obstacles): Label {
  const w = width_of_text(wanted.lines), h = wanted.lines.length * line_height + 6;
  let best: Box | undefined, least = Infinity;
  for (const far of [26, 44, 66, 92, 124, 160, 200, 250])
    for (let k = 0; k < 24; ++k) {
      const angle = wanted.prefer + (k % 2 ? 1 : -1) * Math.ceil(k / 2) * (Math.PI / 12);
      const reach = far + (Math.abs(Math.cos(angle)) * w + Math.abs(Math.sin(angle)) * h) / 2;
      const box = {
        x: wanted.anchor.x + Math.cos(angle) * reach - w / 2, y: wanted.anchor.y - Math.sin(angle) * reach - h / 2, w, h,
      };
      const bad = hidden(box, o) + 9 * far + 90 * Math.ceil(k / 2) + crossed(begin_of(box, wanted.anchor), wanted.anchor, o);
      if (bad < least) { least = bad; best = box; }
    }
  const box = best!;
  o.boxes.push({ x: box.x - 4, y: box.y - 3, w: box.w + 8, h: box.h + 6 });
  const at = begin_of(box, wanted.anchor);
  o.leaders.push({ a: at, b: wanted.anchor });
  return { key: wanted.key, part: wanted.part, lines: wanted.lines, anchor: wanted.anchor, box, at };
}

const midpoint = (a: Point, b: Point, t = 0.5): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });

/** Texts of the sheet before anything runs; the live ones are as long at their longest. */
export function texts(stand: DrawnStand, units: Units) {
  const some = (value: number | undefined, kind: string) => (value === undefined ? '—' : show(value, kind, units));
  return {
    tension: [some(stand.tension, 'force'), stand.low === undefined || stand.high === undefined
      ? 'web tension' : `window ${show(stand.low, 'force', units)} to ${show(stand.high, 'force', units)}`],
    speed: [some(stand.speed, 'speed'), stand.speed === undefined ? 'roll'
      : `${show(stand.speed / (stand.full / 2), 'rotational_speed', units)} at full roll`],
    core: [`Ø ${size(stand.core, units)}`, 'core'],
    disc: stand.disc
      ? [`${stand.disc.pairs} pad pairs`, `${stand.disc.name || 'brake'} Ø ${size(stand.disc.diameter, units)}`]
      : ['no brake', 'add one'],
    air: [some(stand.supply, 'pressure'), 'air supply'],
    line: [some(stand.speed, 'speed'), 'line, nip'],
    guard: [stand.guard === 'none' ? 'no guard' : stand.guard, stand.guard === 'none' ? 'disc open' : 'guard'],
    cell: ['load cell', 'weighs the web'],
    dancer: ['dancer', stand.dancer ? `travel ${size(stand.dancer.travel, units)}` : ''],
    sensor: [stand.sensor === 'turns' ? 'diameter by turns' : 'diameter by sound'],
  };
}

function wanted_labels(stand: DrawnStand, sheet: Sheet, units: Units): Wanted[] {
  const text = texts(stand, units);
  const at = (p: Point) => across(sheet, p);
  const polar = (r: number, deg: number) => at({ x: r * Math.cos((deg * Math.PI) / 180), y: r * Math.sin((deg * Math.PI) / 180) });
  const wanted: Wanted[] = [];
  const want = (key: string, part: string, lines: string[], anchor: Point, deg: number) =>
    wanted.push({ key, part, lines, anchor, prefer: (deg * Math.PI) / 180 });
  const first = sheet.path.legs[0]!;
  want('tension', 'web', text.tension, midpoint(at(first.from), at(first.to), 0.42), (first.heading * 180) / Math.PI + 90);
  want('speed', 'roll', text.speed, polar(stand.full / 2, 22), 10);
  const disc = stand.disc?.diameter ?? stand.core * 1.4;
  want('line', 'line', text.line, sheet.nip.at, 0);
  if (stand.cell !== undefined) {
    const bend = sheet.path.bends.find((one) => one.part === `idler:${stand.cell}`)!;
    want('cell', 'load_cell', text.cell, at({ x: bend.centre.x, y: bend.centre.y - bend.radius - 26 / sheet.scale }), -90);
  }
  const hung = sheet.path.bends.find((one) => one.part === 'dancer');
  if (hung) want('dancer', 'dancer', text.dancer, at(hung.centre), (hung.heading * 180) / Math.PI);
  if (stand.sensor) {
    const away = sheet.sensor.reach / sheet.scale;
    want('sensor', 'diameter_sensor', text.sensor, stand.sensor === 'turns' ? polar(stand.shaft / 2, 200) : polar(away + 14 / sheet.scale, 132), 150);
  }
  if (stand.idlers.length <= 8) stand.idlers.forEach((idler, i) => {
    const bend = sheet.path.bends.find((one) => one.part === `idler:${i}`)!;
    const out = ((bend.heading + (bend.left ? 1 : -1) * (bend.wrap / 2)) * 180) / Math.PI + (bend.left ? -90 : 90);
    want(`idler:${i}`, `idler:${i}`, [idler.name, `Ø ${size(idler.diameter, units)}, ${size(idler.wrap, units, 'angle')}`],
      at(bend.centre), out);
  });
  want('core', 'roll', text.core, polar(stand.core / 2, 215), 240);
  if (sheet.guard) want('guard', 'guard', text.guard, { x: sheet.guard.x + sheet.guard.w, y: sheet.guard.y + sheet.guard.h }, -30);
  else want('guard', 'guard', text.guard, polar(disc / 2, -20), -30);
  return wanted;
}

function obstacles(stand: DrawnStand, sheet: Sheet): Obstacles {
  const at = (p: Point) => across(sheet, p);
  const tight = 26;
  const segments = sheet.path.legs.map((leg) => ({ a: at(leg.from), b: at(leg.to) }));
  segments.push({ a: { x: 14, y: sheet.air.y + 46 }, b: { x: sheet.origin.x, y: sheet.air.y + 46 } });
  for (const end of [sheet.full.from, sheet.full.to]) segments.push({ a: { x: end.x - 6, y: end.y }, b: { x: sheet.origin.x, y: end.y } });
  for (const span of sheet.spans) segments.push({ a: span.from, b: span.to });
  const boxes: Box[] = [
    { x: sheet.air.x - 18, y: sheet.air.y - 46, w: sheet.air.w + 70, h: sheet.air.h + 62 },
    { x: sheet.full.from.x - 34, y: sheet.full.to.y, w: 44, h: sheet.full.from.y - sheet.full.to.y },
    { x: sheet.nip.at.x - 2 * sheet.nip.radius - 6, y: sheet.nip.at.y - 2 * sheet.nip.radius - 6, w: 4 * sheet.nip.radius + 12, h: 4 * sheet.nip.radius + 12 },
  ];
  if (stand.sensor === 'ultrasonic') {
    const x = sheet.origin.x + sheet.sensor.reach * Math.cos(sensor_angle), y = sheet.origin.y - sheet.sensor.reach * Math.sin(sensor_angle);
    boxes.push({ x: x - 16, y: y - 16, w: 32, h: 32 });
  }
  boxes.push({ x: 0, y: 0, w: detail_column - 10, h: sheet.detail.at.y + sheet.detail.r + 60 });
  const missing = Number(!stand.dancer) + Number(!stand.sensor) + Number(stand.cell === undefined);
  if (missing > 0) boxes.push({ x: sheet.width - 10 - missing * 130, y: 0, w: missing * 130 + 10, h: 48 });
  return {
    circles: [
      { at: sheet.origin, r: (stand.full / 2) * sheet.scale + 6, weight: 3 },
      ...sheet.path.bends.map((bend) => ({ at: at(bend.centre), r: bend.radius * sheet.scale + (bend.part === 'dancer' ? 10 : 6), weight: 3 })),
    ],
    segments, leaders: [], boxes, frame: { x: 6, y: 6, w: sheet.width - 12, h: sheet.floor - tight / 2 - 6 },
  };
}

/** The whole sheet for a width in pixels. */
export function make_sheet(stand: DrawnStand, width: number, units: Units): Sheet {
  const radius = stand.full / 2;
  const { spans, turns, dancerRadius } = turns_of(stand);
  const w = Math.max(320, width);
  const margin = { left: detail_column + 44, right: 118, top: 74, bottom: title_height + 34 };
  const most = Math.max(470, Math.min(640, 0.62 * w));
  const aspect = (w - margin.left - margin.right) / (most - margin.top - margin.bottom);
  const path = lay_path(radius, spans, turns, Math.max(4, 6 * stand.full), Math.min(3, Math.max(0.8, aspect)));
  const half = stand.disc && stand.guard !== 'none' ? (1.15 * stand.disc.diameter) / 2 : 0;
  const [left, low, right, high] = extent(path, radius, half);
  const deepest = Math.min(low, -1.16 * radius);
  const scale = Math.min((w - margin.left - margin.right) / (right - left), (most - margin.top - margin.bottom) / (high - deepest));
  const height = Math.max(470, (high - deepest) * scale + margin.top + margin.bottom);
  const spare = w - margin.left - margin.right - (right - left) * scale;
  const origin = { x: margin.left + spare * 0.4 - left * scale, y: height - margin.bottom + deepest * scale };
  const frame = { scale, origin };
  const end = path.legs.at(-1)!;
  const floor = height - title_height - 12;
  const full = {
    key: 'full', from: { x: origin.x - radius * scale - 34, y: origin.y + radius * scale },
    to: { x: origin.x - radius * scale - 34, y: origin.y - radius * scale }, text: `Ø ${size(stand.full, units)}`, shortened: false,
  };
  const box = 2 * half * scale;
  const sheet: Sheet = {
    width: w, height, scale, origin, floor, path, labels: [], full, dancerRadius,
    spans: path.legs.flatMap((leg, i) => {
      // The dancer's two strands are one span of the file: stated on the first.
      if (path.bends[i - 1]?.part === 'dancer') return [];
      const twice = path.bends[i]?.part === 'dancer' ? '2 × ' : '';
      return [span_dimension(frame, path, i, twice + size(leg.length, units, 'web_length'))];
    }),
    air: { x: 66, y: floor - air_size.h - 14, ...air_size },
    guard: half > 0 ? { x: origin.x - box / 2, y: origin.y - box / 2, w: box, h: box } : undefined,
    nip: { at: across(frame, end.to), heading: end.heading, radius: nip_radius * scale },
    bar: scale_bar(scale, units),
    detail: { at: { x: 108, y: 100 }, r: detail_radius, scale: detail_radius / (1.28 * ((stand.disc?.diameter ?? stand.core) / 2)) },
    sensor: { angle: sensor_angle, reach: radius * scale + 44 },
  };
  const o = obstacles(stand, sheet);
  sheet.labels = wanted_labels(stand, sheet, units).map((one) => place(one, o));
  sheet.labels.push(detail_label(stand, sheet, units));
  return sheet;
}

/** Of the brake, below its enlarged view. */
function detail_label(stand: DrawnStand, sheet: Sheet, units: Units): Label {
  const lines = texts(stand, units).disc;
  const { at, r } = sheet.detail;
  const box = { x: 14, y: at.y + r + 10, w: 188, h: 40 };
  return { key: 'disc', part: 'brake', lines, anchor: { x: at.x, y: at.y + r }, box, at: { x: at.x, y: at.y + r } };
}

/** A dimension line beside a leg, on the side away from the bends' insides, so that it does not run through them. */
function span_dimension(frame: { scale: number; origin: Point }, path: Path, i: number, text: string): Dimension {
  const leg = path.legs[i]!;
  const bend = path.bends[i] ?? path.bends[i - 1];
  const side = bend ? (bend.left ? -1 : 1) : -1;
  const offset = i === 0 ? (path.over ? -1 : 1) : side;
  const off = (13 / frame.scale) * offset;
  const by = { x: -Math.sin(leg.heading) * off, y: Math.cos(leg.heading) * off };
  const from = across(frame, { x: leg.from.x + by.x, y: leg.from.y + by.y });
  const to = across(frame, { x: leg.to.x + by.x, y: leg.to.y + by.y });
  return { key: `span:${i}`, from, to, text, shortened: leg.shortened };
}
