/**
 * The way of the web laid out to scale: straight spans of the lengths in the file, arcs of the idlers' radii over
 * their wraps. The file says how far and how much, not which way round: of all ways to turn left or right the search
 * takes the one that stays clear of the roll, crosses nothing and fits on a sheet. Metres, y upwards, roll at the origin.
 */
export interface Point { x: number; y: number }
export interface Turn { part: string; radius: number; wrap: number }
export interface Leg { from: Point; to: Point; heading: number; length: number; shortened: boolean }
export interface Bend { part: string; centre: Point; radius: number; wrap: number; left: boolean; heading: number }
/** legs[0] leaves the roll; bends[i] stands between legs[i] and legs[i + 1]; the last leg ends in the nip. */
export interface Path { legs: Leg[]; bends: Bend[]; over: boolean }

const ahead = (p: Point, heading: number, by: number): Point =>
  ({ x: p.x + by * Math.cos(heading), y: p.y + by * Math.sin(heading) });
/** Turns by more than this say too little about a way in the plane: drawn as this. */
const most_wrap = (250 * Math.PI) / 180;

const between = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

function distance_to(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x, dy = b.y - a.y;
  const t = between(((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1), 0, 1);
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}
function cross(a: Leg, b: Leg): boolean {
  const side = (p: Point, q: Point, r: Point) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a.from, a.to, b.from) !== side(a.from, a.to, b.to) && side(b.from, b.to, a.from) !== side(b.from, b.to, a.to);
}

interface State { path: Path; at: Point; heading: number; faults: number; box: [number, number, number, number] }

function begin(radius: number, heading: number, over: boolean): State {
  const side = over ? heading + Math.PI / 2 : heading - Math.PI / 2;
  const at = ahead({ x: 0, y: 0 }, side, radius);
  return { path: { legs: [], bends: [], over }, at, heading, faults: 0, box: [-radius, -radius, radius, radius] };
}

function grown(box: State['box'], p: Point, by: number): State['box'] {
  return [Math.min(box[0], p.x - by), Math.min(box[1], p.y - by), Math.max(box[2], p.x + by), Math.max(box[3], p.y + by)];
}

/** What is wrong with a new leg and the bend before it, in lengths of a roll's radius. */
function faults_of(path: Path, leg: Leg, bend: Bend | undefined, radius: number, floor: number): number {
  let faults = 0;
  if (path.legs.length > 0) faults += 4 * Math.max(0, 1.25 - distance_to({ x: 0, y: 0 }, leg.from, leg.to) / radius);
  faults += 3 * (Math.max(0, floor - leg.to.y) / radius);
  for (const [i, other] of path.legs.entries()) {
    if (i < path.legs.length - 1 && cross(leg, other)) faults += 2;
    if (bend && i < path.legs.length - 1)
      faults += 3 * Math.max(0, 1 - distance_to(bend.centre, other.from, other.to) / (1.5 * bend.radius));
  }
  for (const [i, other] of path.bends.entries()) {
    if (bend) {
      const gap = Math.hypot(bend.centre.x - other.centre.x, bend.centre.y - other.centre.y);
      faults += 4 * Math.max(0, 1 - gap / (1.3 * (bend.radius + other.radius)));
    }
    if (i < path.bends.length - 1 || bend)
      faults += 3 * Math.max(0, 1 - distance_to(other.centre, leg.from, leg.to) / (1.5 * other.radius));
  }
  if (bend) faults += 4 * Math.max(0, 1.3 - Math.hypot(bend.centre.x, bend.centre.y) / (radius + bend.radius));
  return faults;
}

function go(state: State, length: number, most: number, bend: Bend | undefined, radius: number, floor: number): State {
  const drawn = Math.min(length, most);
  const to = ahead(state.at, state.heading, drawn);
  const leg = { from: state.at, to, heading: state.heading, length, shortened: drawn < length };
  const faults = state.faults + faults_of(state.path, leg, bend, radius, floor);
  const bends = bend ? [...state.path.bends, bend] : state.path.bends;
  let box = grown(state.box, to, 0.02);
  if (bend) box = grown(box, bend.centre, bend.radius);
  return { path: { legs: [...state.path.legs, leg], bends, over: state.path.over }, at: to, heading: state.heading, faults, box };
}

function bent(state: State, turn: Turn, left: boolean): { state: State; bend: Bend } {
  const wrap = Math.min(turn.wrap, most_wrap);
  const centre = ahead(state.at, state.heading + (left ? 1 : -1) * (Math.PI / 2), turn.radius);
  const heading = state.heading + (left ? wrap : -wrap);
  const at = ahead(centre, heading + (left ? -1 : 1) * (Math.PI / 2), turn.radius);
  return { state: { ...state, at, heading }, bend: { part: turn.part, centre, radius: turn.radius, wrap, left, heading: state.heading } };
}

/** Less is better: faults, then the scale that the sheet allows, then a web that leaves to the right. */
function cost(state: State, radius: number, aspect: number, last: boolean): number {
  const [left, low, right, high] = state.box;
  const size = Math.max((right - left) / aspect, high - low) / radius;
  const away = last ? 0.5 * (1 - Math.cos(state.heading)) + 0.35 * (right - state.at.x) / radius : 0;
  return 6 * state.faults + size + away;
}

const keep = (turns: number) => (turns > 20 ? 10 : 48);  // ways followed on; a long path is not worth more of a person's time
const starts = [0, 10, 20, -10, 35, 50, 70, 90, -25].map((deg) => (deg * Math.PI) / 180);

/**
 * Lays the path out. `spans` has one length more than `turns`; lengths above `most` are drawn as `most` and marked.
 * `aspect` is the width of the sheet over its height. Any finite positive input gives a path; where no way is free of faults, the least faulty.
 */
export function lay_path(radius: number, spans: number[], turns: Turn[], most: number, aspect = 2): Path {
  const floor = -1.35 * radius;
  let states = starts.map((heading) => go(begin(radius, heading, true), spans[0]!, most, undefined, radius, floor));
  turns.forEach((turn, i) => {
    const next = states.flatMap((state) => [true, false].map((left) => {
      const made = bent(state, turn, left);
      return go(made.state, spans[i + 1]!, most, made.bend, radius, floor);
    }));
    const last = i === turns.length - 1;
    next.sort((a, b) => cost(a, radius, aspect, last) - cost(b, radius, aspect, last));
    states = next.slice(0, keep(turns.length));
  });
  states.sort((a, b) => cost(a, radius, aspect, true) - cost(b, radius, aspect, true));
  return states[0]!.path;
}

/** Where the web leaves a roll of this radius for the end of the first leg, on the same side as at the full roll. */
export function leaves_at(path: Path, radius: number): Point {
  const first = path.legs[0]!;
  const bend = path.bends[0];
  const target = bend ? bend.centre : first.to;
  // A common tangent: the roll lies right of the web that leaves over it, the bend on the side it turns to.
  const near = path.over ? -radius : radius;
  const far = bend ? (bend.left ? bend.radius : -bend.radius) : 0;
  const gap = Math.hypot(target.x, target.y);
  const lean = Math.asin(between((far - near) / gap, -1, 1));
  const heading = Math.atan2(target.y, target.x) - lean;
  return ahead({ x: 0, y: 0 }, heading + (path.over ? 1 : -1) * (Math.PI / 2), radius);
}

/** Where that web meets the first bend, or the nip. */
export function meets_at(path: Path, radius: number): Point {
  const bend = path.bends[0];
  if (!bend) return path.legs[0]!.to;
  const from = leaves_at(path, radius);
  const near = path.over ? -radius : radius;
  const far = bend.left ? bend.radius : -bend.radius;
  const gap = Math.hypot(bend.centre.x, bend.centre.y);
  const run = Math.sqrt(Math.max(0, gap * gap - (far - near) ** 2));
  const heading = Math.atan2(from.y, from.x) - (path.over ? 1 : -1) * (Math.PI / 2);
  return ahead(from, heading, run);
}
