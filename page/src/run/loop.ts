/**
 * Advances one run, or two in step, at a chosen speed. Never asks for more while an answer is on its way: what time has
 * passed meanwhile goes into the next advance. Inputs that come between two advances are gathered, the later over the earlier.
 */
import type { Core, StandView } from '../contract';
import { Strips } from './strips';

export type Inputs = Record<string, unknown>;
export interface Track { control: string; run: number; state: any; strips: Strips; over: boolean }
type Stretch = { running: Track[]; states: any[] }[];
export interface Opened { tracks: Track[]; refused?: any; problem?: string }

const longest_frame = 0.25;  // [s] that one frame may stand for, so that a page that slept does not leap
const stretch = 110;         // [ms] of computing between two drawings when the whole roll is run
const most_still = 120;      // advances that a whole roll stands still before it counts as over

/** Later inputs win, and one that contradicts an earlier one takes it back. */
export function merged(before: Inputs, more: Inputs): Inputs {
  const out = { ...before };
  const drop = (...keys: string[]) => { for (const key of keys) delete out[key]; };
  if ('pressure' in more) drop('automatic');
  if ('automatic' in more) drop('pressure');
  if ('line_speed' in more) drop('stop', 'within');
  if (more['stop'] || more['emergency_stop']) drop('line_speed', 'within');
  if (more['emergency_stop']) drop('stop');
  Object.assign(out, more);
  if (out['emergency_stop']) drop('line_speed', 'within', 'stop');
  return out;
}

export class RunLoop {
  tracks: Track[] = [];
  factor = 1;
  playing = false;
  private pending: Inputs = {};
  private busy = false;
  private generation = 0;
  private last: number | undefined;

  /** `onStep` hears of every answer, `onFault` of what ends the run from outside. */
  constructor(private readonly core: Core, private readonly onStep: (tracks: Track[]) => void, private readonly onFault: (what: string) => void) {}

  get in_flight(): boolean { return this.busy; }
  get over(): boolean { return this.tracks.length === 0 || this.tracks.every((one) => one.over); }

  /** Opens a run for each control; closes those before. */
  async open(stand: { name: string; text: string }, job: string, controls: string[], jobs?: StandView['jobs']): Promise<Opened> {
    const mine = this.forget();
    const tracks: Track[] = [];
    try {
      for (const control of controls) {
        const got = await this.core.liveOpen({ version: 1, stand, job, compare: [control], ...(jobs ? { jobs } : {}) });
        if (typeof got?.run !== 'number') {
          for (const one of tracks) void this.core.liveClose(one.run).catch(() => undefined);
          return got?.problem ? { tracks: [], problem: String(got.problem) } : { tracks: [], refused: got };
        }
        const strips = new Strips();
        strips.add(got.state);
        tracks.push({ control, run: got.run, state: got.state, strips, over: ended(got.state) });
      }
    } catch (error) {
      return { tracks: [], problem: error instanceof Error ? error.message : String(error) };
    }
    if (mine !== this.generation) {
      for (const one of tracks) void this.core.liveClose(one.run).catch(() => undefined);
      return { tracks: [] };
    }
    this.tracks = tracks;
    return { tracks };
  }

  private forget(): number {
    for (const one of this.tracks) void this.core.liveClose(one.run).catch(() => undefined);
    this.tracks = [];
    this.playing = false;
    this.busy = false;
    this.pending = {};
    this.last = undefined;
    return ++this.generation;
  }
  close(): void { this.forget(); }

  send(inputs: Inputs): void { this.pending = merged(this.pending, inputs); }

  /** Once for every frame of the screen; `now` in milliseconds. */
  frame(now: number): void {
    if (this.last === undefined) this.last = now;
    if (this.busy) return;
    const passed = Math.min(longest_frame, Math.max(0, (now - this.last) / 1000));
    this.last = now;
    const asked = Object.keys(this.pending).length > 0;
    if (this.over || (!this.playing && !asked)) return;
    void this.advance(this.playing ? passed * this.factor : 0);
  }

  /** One advance of every track, together; false when the run is gone. */
  async advance(seconds: number): Promise<boolean> {
    if (this.busy) return false;
    this.busy = true;
    const mine = this.generation;
    const inputs = this.pending;
    this.pending = {};
    try {
      const running = this.tracks.filter((one) => !one.over);
      const answers = await Promise.all(running.map((one) => this.core.liveAdvance(one.run, seconds, inputs)));
      if (mine !== this.generation) return false;
      this.busy = false;
      const bad = answers.find((one) => !one?.state);
      if (bad) return this.fault(String(bad?.problem ?? 'The core gave no state.'));
      running.forEach((one, i) => take(one, answers[i].state));
      this.onStep(this.tracks);
      if (this.over) this.playing = false;
      return true;
    } catch (error) {
      if (mine !== this.generation) return false;
      return this.fault(error instanceof Error ? error.message : String(error));
    }
  }

  private fault(what: string): false {
    this.forget();
    this.onFault(what || 'The calculation stopped.');
    return false;
  }

  /**
   * Runs on until no web is left, as fast as the core can, `step` seconds an advance. The core computes the next stretch
   * while `breathe` shows the last; it says whether to go on. Ends too when the line has stood still for a while with
   * nothing left to come.
   */
  async whole(step: number, breathe: (tracks: Track[]) => Promise<boolean>): Promise<void> {
    const mine = this.generation;
    while (this.busy && mine === this.generation) await new Promise((done) => setTimeout(done));
    if (this.over || mine !== this.generation) return;
    let [next, still, on] = [this.leap(step), 0, true];
    for (;;) {
      const steps = await next;
      if (!steps) return;
      const ran = this.tracks[0]!.state.web_run;
      if (!this.take(steps)) return;
      still = this.tracks[0]!.state.web_run === ran ? still + steps.length : 0;
      on = on && !this.over && still <= most_still;
      if (on) next = this.leap(step);
      else this.busy = false;
      const go_on = await breathe(this.tracks);
      if (mine !== this.generation || !on) return;
      on = go_on; // a stretch that is on its way is still taken
    }
  }

  /** A stretch of advances in the core; nothing when the run is gone. */
  private async leap(step: number): Promise<Stretch | undefined> {
    const mine = this.generation;
    const running = this.tracks.filter((one) => !one.over);
    const inputs = this.pending;
    this.pending = {};
    this.busy = true;
    try {
      const answers = await this.core.liveLeap(running.map((one) => one.run), step, stretch, inputs);
      return mine === this.generation ? answers.map((states) => ({ running, states })) : undefined;
    } catch (error) {
      if (mine === this.generation) this.fault(error instanceof Error ? error.message : String(error));
      return undefined;
    }
  }

  private take(steps: Stretch): boolean {
    for (const { running, states } of steps) {
      for (const [i, track] of running.entries()) {
        if (track.over) continue;
        if (!states[i]?.state) return this.fault(String(states[i]?.problem ?? 'The core gave no state.'));
        take(track, states[i].state);
      }
      this.onStep(this.tracks);
    }
    return true;
  }
}

const ended = (state: any) => Boolean(state?.at_core || state?.failed);

function take(track: Track, state: any): void {
  track.state = state;
  track.strips.add(state);
  track.over = ended(state);
}
