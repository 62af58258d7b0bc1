/**
 * What the drawing needs of a parsed stand file, in SI. Sizes that the file does not give are marked as symbols: they
 * are drawn as a convention and the sheet says so. Nothing is judged here; a file with faults still gives a drawing.
 */
import { angle_of, area_of, length_of, pressure_of, speed_of, temperature_of } from './quantity';

export interface DrawnIdler { name: string; diameter: number; wrap: number; span: number }
export interface DrawnPads { shape: 'round' | 'sector' | 'square'; radius: number; size: number; angle: number }
export interface DrawnDisc {
  name: string; diameter: number; bore: number; pads: DrawnPads; pairs: number; rated: number | undefined;
}
export type GuardKind = 'none' | 'mesh' | 'partly closed' | 'closed';
export interface DrawnStand {
  title: string;
  job: string;
  webName: string;
  full: number;                    // [m] diameter of the full roll
  core: number;                    // [m]
  shaft: number;                   // [m] diameter
  shaftIsSymbol: boolean;
  disc: DrawnDisc | undefined;
  brakes: number;                  // candidates in the file
  guard: GuardKind;
  supply: number | undefined;      // [Pa]
  highest: number | undefined;     // [Pa] of the regulator
  firstSpan: number;               // [m]
  idlers: DrawnIdler[];
  cell: number | undefined;        // index of the idler that weighs
  cellAtNip: boolean;              // a load cell without idlers sits before the nip
  dancer: { behind: number; travel: number } | undefined;  // −1: behind the roll
  sensor: 'ultrasonic' | 'turns' | undefined;
  control: string;
  speed: number | undefined;       // [m/s] of the job
  topSpeed: number | undefined;    // [m/s]
  tension: number | undefined;     // [N] setpoint
  low: number | undefined;         // [N]
  high: number | undefined;        // [N]
  ambient: number | undefined;     // [K]
}

const list = (value: unknown): any[] => (Array.isArray(value) ? value.filter((one) => one && typeof one === 'object') : []);
const table = (value: unknown): any => (value && typeof value === 'object' && !Array.isArray(value) ? value : {});
const within = (value: number | undefined, otherwise: number, least: number, most: number) =>
  value === undefined || !Number.isFinite(value) ? otherwise : Math.min(most, Math.max(least, value));

/** What check said of this job, whether it was given whole or as the part below "check". */
export function checked_job(check: any, job: string): any {
  const jobs = list(check?.check?.jobs ?? check?.jobs);
  return jobs.find((one) => one.job === job);
}

/** The pads and the ring that they rub [m]. */
function pads_of(brake: any): { pads: DrawnPads; inner: number; outer: number } {
  if (brake.pad === 'sector') {
    const inner = within(length_of(brake.pad_inner_diameter), 0.16, 0.005, 5) / 2;
    const outer = Math.max(inner * 1.02, within(length_of(brake.pad_outer_diameter), 0.24, 0.005, 5) / 2);
    const angle = within(angle_of(brake.pad_angle), 0.6, 0.02, 2 * Math.PI);
    return { pads: { shape: 'sector', radius: (inner + outer) / 2, size: outer - inner, angle }, inner, outer };
  }
  if (brake.pad === 'round') {
    const size = within(length_of(brake.pad_diameter), 0.04, 0.002, 1);
    const radius = within(length_of(brake.pad_centre_diameter), 0.24, 0.005, 5) / 2;
    return { pads: { shape: 'round', radius, size, angle: 0 }, inner: radius - size / 2, outer: radius + size / 2 };
  }
  // A data sheet gives a face without its outline: drawn square.
  const radius = within(length_of(brake.effective_diameter), 0.24, 0.01, 10) / 2;
  const size = Math.min(Math.sqrt(within(area_of(brake.pad_area), 0.0016, 1e-5, 1)), radius);
  return { pads: { shape: 'square', radius, size, angle: 0 }, inner: radius - size / 2, outer: radius + size / 2 };
}

function disc_of(brake: any): DrawnDisc {
  const { pads, inner, outer } = pads_of(brake);
  const edge = 1.03;  // of the disc outside of its pads, where the file gives no diameter
  const diameter = within(length_of(brake.disc_diameter), 2 * outer * edge, 0.02, 5);
  const bore = Math.min(within(length_of(brake.disc_bore), 2 * inner, 0.005, 5), 0.9 * diameter);
  const pairs = Math.round(within(Number(brake.pairs), 1, 1, 24));
  return { name: String(brake.name ?? ''), diameter, bore, pads, pairs, rated: temperature_of(brake.rated_temperature) };
}

function shaft_of(file: any, core: number): { shaft: number; shaftIsSymbol: boolean } {
  const widest = Math.max(0, ...list(file.shaft?.section).map((one) => length_of(one.diameter) ?? 0));
  return widest > 0 ? { shaft: widest, shaftIsSymbol: false } : { shaft: 0.45 * core, shaftIsSymbol: true };
}

/** Reads the parsed file for a job; `brake` names the one that is drawn, else the first. */
export function drawn_stand(file: any, check: any, jobName: string, brakeName?: string): DrawnStand {
  const f = table(file);
  const checked = checked_job(check, jobName);
  const job = list(f.job).find((one) => one.name === jobName) ?? {};
  const rollName = checked?.roll ?? job.roll;
  const roll = list(f.roll).find((one) => one.name === rollName) ?? list(f.roll)[0] ?? {};
  const core = within(length_of(roll.core_diameter), 0.1, 0.01, 5);
  const full = Math.max(core, within(length_of(roll.full_diameter), 0.8, 0.01, 5));
  const brakes = list(f.brake);
  const brake = brakes.find((one) => one.name === brakeName) ?? brakes[0];
  const idlers = list(f.idler).slice(0, 200).map((one, i) => ({
    name: String(one.name ?? `idler ${i + 1}`),
    diameter: within(length_of(one.diameter), 0.1, 0.005, 3),
    wrap: within(angle_of(one.wrap), Math.PI / 2, 0.01, 4 * Math.PI),
    span: within(length_of(one.span), 1, 0.02, 100),
  }));
  const called = (name: unknown, otherwise: number) => {
    const found = idlers.findIndex((one) => one.name === name);
    return found >= 0 ? found : otherwise;
  };
  const cellThere = f.load_cell !== undefined;
  const guard = f.stand?.guard ?? 'mesh';
  return {
    title: String(f.stand?.title ?? 'untitled stand'),
    job: jobName,
    webName: String(checked?.web ?? job.web ?? ''),
    full,
    core,
    ...shaft_of(f, core),
    disc: brake ? disc_of(brake) : undefined,
    brakes: brakes.length,
    guard: ['none', 'mesh', 'partly closed', 'closed'].includes(guard) ? guard : 'mesh',
    supply: pressure_of(f.air?.supply_pressure ?? '6 bar'),
    highest: pressure_of(f.air?.highest_pressure ?? '6 bar'),
    firstSpan: within(length_of(f.path?.first_span), 1.5, 0.02, 100),
    idlers,
    cell: cellThere && idlers.length > 0 ? called(f.load_cell?.idler, idlers.length - 1) : undefined,
    cellAtNip: cellThere && idlers.length === 0,
    dancer: f.dancer === undefined ? undefined : {
      // As the core counts the spans: behind the idler it names, else in the middle of the path.
      behind: called(f.dancer?.idler, Math.floor(idlers.length / 2) - 1),
      travel: within(length_of(f.dancer?.travel), 0.2, 0.001, 10),
    },
    sensor: f.diameter_sensor === undefined ? undefined : f.diameter_sensor?.method === 'turns' ? 'turns' : 'ultrasonic',
    control: String(f.control?.kind ?? 'hand'),
    speed: checked?.speed ?? speed_of(job.speed),
    topSpeed: speed_of(f.line?.top_speed),
    tension: checked?.tension?.setpoint,
    low: checked?.tension?.low,
    high: checked?.tension?.high,
    ambient: temperature_of(f.stand?.ambient ?? '25 degC'),
  };
}
