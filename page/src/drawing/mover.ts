/**
 * Sets what moves of a drawing to a state of the run. Only what differs from the last time is written; texts only when
 * asked for, since nobody reads a number sixty times a second.
 */
import { heat_share, spiral, web_path, web_point } from './moving';
import { beam, dimension_arrows, dimension_line, disc_words, extension, leader, spiral_turns, type Drawing } from './parts';
import { show } from './quantity';

export type Elements = Map<string, SVGElement>;

export type Move = (live: any, texts?: boolean) => void;

export function mover(d: Drawing, elements: Elements): Move {
  const { stand, sheet, units } = d;
  const last = new Map<string, string>();
  const write = (key: string, name: string, value: string) => {
    const slot = `${key} ${name}`;
    if (last.get(slot) === value) return;
    const element = elements.get(key);
    if (!element) return;
    last.set(slot, value);
    if (name === 'text') element.textContent = value;
    else element.setAttribute(name, value);
  };
  let told = true;
  const text = (key: string, value: () => string) => { if (told) write(key, 'text', value()); };
  const core = (stand.core / 2) * sheet.scale, full = (stand.full / 2) * sheet.scale;
  const turns_wound = spiral_turns(core, full);
  let wound = full;
  const turns = new Map<number, number>();
  let run = 0;
  const label = sheet.labels.find((one) => one.key === 'tension');

  const roll = (live: any) => {
    const radius = live.diameter / 2, r = radius * sheet.scale;
    const degrees = ((live.angle * 180) / Math.PI) % 360;
    write('roll', 'r', r.toFixed(1));
    // A pixel less of the roll is a new spiral; in between it only turns.
    if (!(Math.abs(r - wound) < 1)) {
      wound = r;
      write('spiral', 'd', spiral(core, full, turns_wound, r));
      write('mark', 'd', `M${(core + 2).toFixed(1)} 0H${r.toFixed(1)}`);
    }
    for (const key of ['turning', 'key', 'true:marks', 'large:marks']) write(key, 'transform', `rotate(${degrees.toFixed(1)})`);
    write('extension', 'd', extension(sheet, radius));
    write('full.line', 'd', dimension_line(2 * r));
    write('full.arrows', 'd', dimension_arrows(2 * r));
    text('full.0', () => `Ø ${show(live.diameter, 'short_length', units)}`);
    text('speed.0', () => show(live.rim_speed, 'speed', units));
    text('speed.1', () => live.held ? 'held by the brake' : `roll ${show(live.roll_speed, 'rotational_speed', units)}`);
    write('beam', 'd', beam(sheet, r));
  };

  const web = (live: any) => {
    const hung = stand.dancer ? live.dancer * (stand.dancer.travel / 2) : 0;
    const state = { radius: live.diameter / 2, slack: live.slack, broken: live.broken, dancer: hung };
    write('web', 'd', web_path(sheet, state));
    if (label) {
      const point = web_point(sheet, state, state.broken ? 0.2 : 0.42);
      write('tension.leader', 'd', leader(label.at, point));
      write('tension.dot', 'cx', point.x.toFixed(1));
      write('tension.dot', 'cy', point.y.toFixed(1));
    }
    write('web', 'class', live.broken ? 'el-web is-broken' : live.slack > 0 ? 'el-web is-slack' : 'el-web');
    write('dancer', 'transform', `translate(${(hung * sheet.scale).toFixed(2)} 0)`);
    text('tension.0', () => show(live.tension, 'force', units));
    text('tension.1', () => live.broken ? 'web parted' : live.slack > 0 ? `slack ${show(live.slack, 'short_length', units)}`
      : `window ${show(live.low, 'force', units)} to ${show(live.high, 'force', units)}`);
    text('line.0', () => show(live.line_speed, 'speed', units));
    text('limits.1', () => `${show(live.low, 'force', units)} to ${show(live.high, 'force', units)}`);
    text('cell.0', () => show(live.measured_tension, 'force', units));
    text('cell.1', () => 'load cell');
    const gone = live.web_run - run;
    run = live.web_run;
    for (const bend of sheet.path.bends) {
      if (!bend.part.startsWith('idler:')) continue;
      const i = Number(bend.part.slice(6));
      const angle = ((turns.get(i) ?? 0) + ((bend.left ? -1 : 1) * gone * 180) / (Math.PI * bend.radius)) % 360;
      turns.set(i, angle);
      write(`spin:${i}`, 'transform', `rotate(${angle.toFixed(1)})`);
    }
  };

  const brake = (live: any) => {
    const share = heat_share(live.disc, stand.ambient, stand.disc?.rated);
    const pairs = stand.disc?.pairs ?? 0;
    for (const view of ['true', 'large'])
      write(`${view}:disc`, 'style', `--heat:${(100 * share).toFixed(0)}%;--hatch:${share.toFixed(2)}`);
    text('disc.0', () => disc_words(live.disc, share, units));
    text('disc.1', () => `${live.pairs} of ${pairs} pairs engaged`);
    for (let i = 0; i < pairs; ++i) {
      const engaged = i < live.pairs;
      for (const view of ['true', 'large']) {
        write(`${view}:pair:${i}`, 'class', engaged ? 'el-pair is-engaged' : 'el-pair is-released');
        write(`${view}:pair:${i}`, 'transform', engaged ? 'translate(0 0)' : `translate(${view === 'true' ? 3 : 9} 0)`);
      }
    }
    text('air.0', () => show(Math.abs(live.pressure) < 1 ? 0 : live.pressure, 'pressure', units));
    text('air.1', () => `asked ${show(live.set_pressure, 'pressure', units)}`);
    const part = Math.min(1, Math.max(0, live.pressure / (stand.highest || 6e5)));
    write('needle', 'transform', `rotate(${(-135 + 270 * part).toFixed(1)})`);
  };

  return (live, texts = true) => {
    if (!live || !Number.isFinite(live.diameter)) return;
    told = texts;
    roll(live);
    web(live);
    brake(live);
  };
}
