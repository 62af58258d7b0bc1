/** What happened in a run, in words: seen in its states, and done by a hand. */
import { length_kind } from './words';
import { show, type Units } from '../drawing/quantity';

export interface Happening { time: number; text: string; mark: string; loud: boolean; track: number }

/** What of a state is told: one word each, never colour alone. */
export function state_words(state: any): { key: string; word: string; bad: boolean }[] {
  const words = [];
  if (state.failed) words.push({ key: 'failed', word: `failed: ${state.fault || 'the equations could not be stepped on'}`, bad: true });
  if (state.broken) words.push({ key: 'broken', word: 'web broken', bad: true });
  else if (state.slack > 0) words.push({ key: 'slack', word: 'slack', bad: true });
  if (state.at_core) words.push({ key: 'core', word: 'at core: no web is left', bad: false });
  if (state.held) words.push({ key: 'held', word: 'roll held by the brake', bad: false });
  else if (Math.abs(state.rim_speed) > 1e-4 && !state.at_core && !state.failed) words.push({ key: 'running', word: 'running', bad: false });
  if (!state.broken && state.slack <= 0 && state.tension < state.low) words.push({ key: 'low', word: 'tension below its window', bad: true });
  if (!state.broken && state.tension > state.high) words.push({ key: 'high', word: 'tension above its window', bad: true });
  return words;
}

/** Watches the states of one track and tells each change once; the depth of slack when it is over. */
export class Watcher {
  private slack = false;
  private open = false;   // slack was told and its end not yet
  private deepest = 0;
  private ended = -Infinity;
  private held: boolean | undefined;
  private broken = false;
  private core = false;
  private failed = false;

  constructor(private readonly track: number, private readonly name: string) {}

  see(state: any, units: Units): Happening[] {
    const out: Happening[] = [];
    const tell = (text: string, mark: string, loud: boolean) =>
      out.push({ time: state.time, text: this.name ? `${this.name}: ${text}` : text, mark, loud, track: this.track });
    this.see_slack(state, units, tell);
    this.see_nothing(state, tell);
    if (state.broken && !this.broken) tell('the web has parted', 'web parted', true);
    if (this.held !== undefined && state.held !== this.held)
      tell(state.held ? 'the brake holds the roll' : 'the roll turns', state.held ? 'held' : 'turns', state.held && state.time > 0);
    if (state.at_core && !this.core) tell('no web is left: the run is over', 'core', true);
    if (state.failed && !this.failed) tell(`the run was broken off: ${state.fault}`, 'failed', true);
    this.broken = state.broken; this.held = state.held; this.core = state.at_core; this.failed = state.failed;
    return out;
  }

  /** At many times true speed a web may be slack and taut again between two looks: its lowest tension tells. */
  private see_nothing(state: any, tell: (text: string, mark: string, loud: boolean) => void): void {
    const nothing = state.lowest_tension <= 0 && state.slack <= 0 && !state.broken && state.highest_tension > 0;
    if (nothing && !this.open && state.time - this.ended > 1) tell('slack for a moment: the tension fell to nothing', 'slack', true);
    if (nothing) this.ended = state.time;
  }

  /** Slack that comes again within a second is the same. */
  private see_slack(state: any, units: Units, tell: (text: string, mark: string, loud: boolean) => void): void {
    const slack = state.slack > 0 && !state.broken;
    if (slack && !this.slack && !this.open) {
      this.deepest = 0;
      this.open = true;
      tell(`slack: the web hangs loose, ${show(state.slack, length_kind(state.slack), units)}`, 'slack', true);
    }
    if (slack) this.deepest = Math.max(this.deepest, state.slack);
    if (!slack && this.slack) this.ended = state.time;
    if (!slack && this.open && (state.broken || state.time - this.ended >= 1)) {
      this.open = false;
      if (!state.broken) tell(`taut again; slack was up to ${show(this.deepest, length_kind(this.deepest), units)}`, 'taut', false);
    }
    this.slack = slack;
  }
}

/** Time of a run as it is read off a log. */
export function clock_text(seconds: number): string {
  const whole = Math.max(0, seconds);
  const h = Math.floor(whole / 3600), m = Math.floor((whole % 3600) / 60), s = whole % 60;
  const two = (n: number) => String(n).padStart(2, '0');
  return h > 0 ? `${h}:${two(m)}:${two(Math.floor(s))}` : `${m}:${s < 10 ? '0' : ''}${s.toFixed(1)}`;
}
