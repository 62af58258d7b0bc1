/**
 * A run and everything that keeps it: the loop, its frame, its log, what a hand has set. The drawing and the strips are
 * set by hand each frame; the numbers are rendered a few times a second.
 */
import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { RunAreaProps } from '../contract';
import type { Move } from '../drawing/mover';
import { checked_job, drawn_stand } from '../drawing/stand';
import { clock_text, Watcher, type Happening } from './events';
import { RunLoop, type Inputs, type Track } from './loop';
import { CanvasPen } from './pen';
import { draw_strips, palettes, strip_kinds, strip_range, type View } from './plot';
import type { Canvas } from './StripChart';

export const controls = ['hand', 'diameter', 'load cell', 'dancer'];
const marks: Record<string, string> = {
  line_speed: 'line', stop: 'stop', emergency_stop: 'emergency stop', pairs: 'pairs', pressure: 'regulator', automatic: 'automatic',
  setpoint: 'setpoint', splice: 'splice', break_web: 'web cut', air: 'air',
};
const most_log = 400;
const strips_every = 25;   // [ms] strips, while the stand runs
const text_every = 100;    // [ms] numbers on the drawing
const number_every = 200;  // [ms] numbers beside it

/** The problems of an answer that refuses, in words. */
export function refusal(answer: any): string[] {
  const problems = (answer?.problems ?? []).filter((one: any) => one.severity !== 'warning');
  const text = (one: any) => [one.field, one.value && `“${one.value}”`].filter(Boolean).join(' ')
    + `: ${one.what?.text ?? ''}${one.accepted?.text ? ` Accepted: ${one.accepted.text}.` : ''}`;
  return problems.length > 0 ? problems.map(text) : ['The core refused this run without a reason.'];
}

/** What a strip shows of a run that is `end` seconds old, when `wanted` seconds are asked for. */
export function view_of(end: number, wanted: number): View {
  const long = Number.isFinite(wanted) ? wanted : Math.max(20, end);
  return end <= long ? { begin: 0, end: long } : { begin: end - long, end };
}

export interface Hand { byHand: boolean; air: boolean; stopped: boolean }
const hands_off: Hand = { byHand: false, air: true, stopped: false };
interface Shown { tick: number; message: string[]; opening: boolean; ready: boolean; whole: number | undefined; spoken: string }

/** Calls `each` on every frame of the screen and `slow` a few times a second. */
function useFrames(each: (now: number) => void, slow: () => void): void {
  useEffect(() => {
    let handle = 0, ticked = 0;
    const frame = (now: number) => {
      handle = requestAnimationFrame(frame);
      each(now);
      if (now - ticked > number_every) { ticked = now; slow(); }
    };
    handle = requestAnimationFrame(frame);
    return () => cancelAnimationFrame(handle);
  }, [each, slow]);
}

export type Run = ReturnType<typeof useRun>;

export function useRun(props: RunAreaProps) {
  const { core, stand, theme } = props;
  const own = String(stand.file?.control?.kind ?? 'hand');
  const [control, setControl] = useState(controls.includes(own) ? own : 'hand');
  const [other, setOther] = useState<string>();
  const [speed, setSpeed] = useState(1);
  const [span, setSpan] = useState<number>();
  const [hand, setHand] = useState(hands_off);
  const [looked, setLooked] = useState(0);
  const [again, setAgain] = useState(0);
  const [shown, setShown] = useState<Shown>({ tick: 0, message: [], opening: true, ready: false, whole: undefined, spoken: '' });
  const show = useCallback((more: Partial<Shown>) => setShown((s) => ({ ...s, ...more })), []);
  const tick = useCallback(() => setShown((s) => ({ ...s, tick: s.tick + 1 })), []);
  const { fit } = stand; // the one that the core runs

  const units = useRef(stand.units);
  const lookedAt = useRef(looked);
  units.current = stand.units;
  lookedAt.current = looked;
  const log = useRef<Happening[]>([]);
  const watchers = useRef<Watcher[]>([]);
  const canvases = useRef<(Canvas | null)[]>([null, null]);
  const move = useRef<Move | undefined>(undefined);
  const told = useRef(0);
  const stripped = useRef(0);
  const behind = useRef(false);
  const dirty = useRef(true);
  const wholeAsked = useRef(false);

  const tell = useCallback((happening: Happening) => {
    log.current.push(happening);
    if (log.current.length > most_log) log.current.splice(0, log.current.length - most_log);
    if (happening.loud) show({ spoken: `${clock_text(happening.time)}: ${happening.text}` });
  }, [show]);

  const loop = useMemo(() => new RunLoop(core,
    (tracks) => {
      dirty.current = true;
      tracks.forEach((one, i) => watchers.current[i]?.see(one.state, units.current).forEach(tell));
    },
    (what) => show({ ready: false, message: [`The run has ended: ${what}`, 'Your file is untouched. Start the run anew.'] })), [core, tell, show]);

  const names = useMemo(() => (other === undefined ? [control] : [control, other]), [control, other]);
  useEffect(() => {
    let gone = false;
    log.current = [];
    watchers.current = names.map((name, i) => new Watcher(i, names.length > 1 ? name : ''));
    setHand(hands_off);
    setLooked(0);
    show({ opening: true, ready: false, message: [], spoken: '', whole: undefined });
    void loop.open({ name: 'stand', text: stand.text }, stand.job, names, stand.jobs).then((opened) => {
      if (gone) return;
      dirty.current = true;
      const message = opened.problem ? [opened.problem] : opened.refused ? refusal(opened.refused) : [];
      show({ opening: false, ready: opened.tracks.length > 0, message });
    });
    return () => { gone = true; wholeAsked.current = false; loop.close(); };
  }, [loop, show, stand.text, stand.jobs, stand.job, names, again]);

  const facts = useMemo(() => drawn_stand(stand.file, stand.check, stand.job, fit?.brake), [stand.file, stand.check, stand.job, fit?.brake]);
  const job = checked_job(stand.check, stand.job);
  const time = useCallback(() => Math.max(0, ...loop.tracks.map((one) => one.state.time)), [loop]);
  const view = useCallback(() => view_of(Math.max(0, ...loop.tracks.map((one) => one.strips.end)),
    span ?? (wholeAsked.current ? Infinity : 20 * Math.min(loop.factor, 30))), [loop, span]);

  const draw = useCallback(() => {
    const { tracks } = loop;
    const seen = tracks[Math.min(lookedAt.current, tracks.length - 1)];
    if (!seen) return;
    const now = performance.now(), texts = now - told.current > text_every || !loop.playing;
    if (texts) told.current = now;
    move.current?.(seen.state, texts);
    // The strips are drawn on every other frame: they creep, while the roll turns.
    if (loop.playing && !texts && now - stripped.current < strips_every) { behind.current = true; return; }
    stripped.current = now;
    behind.current = false;
    const at = view();
    const ranges = strip_kinds.map((kind) => strip_range(kind, tracks.map((one) => one.strips), at));
    tracks.forEach((one, i) => {
      const canvas = canvases.current[i];
      if (canvas) draw_strips(new CanvasPen(canvas.context), canvas, one.strips, ranges, at, units.current, palettes[theme],
        log.current.filter((happening) => happening.track < 0 || happening.track === i));
    });
  }, [loop, view, theme]);

  const each = useCallback((now: number) => {
    if (wholeAsked.current) return;
    loop.frame(now);
    if (dirty.current || (behind.current && !loop.playing)) { dirty.current = false; draw(); }
  }, [loop, draw]);
  const slow = useCallback(() => { if (!wholeAsked.current) tick(); }, [tick]);
  useFrames(each, slow);
  useEffect(() => { dirty.current = true; }, [draw, stand.units, looked]);

  const act = useCallback((inputs: Inputs, text: string) => {
    if (loop.over) return;
    loop.send(inputs);
    if ('pressure' in inputs || 'automatic' in inputs) setHand((h) => ({ ...h, byHand: 'pressure' in inputs }));
    if ('air' in inputs) setHand((h) => ({ ...h, air: Boolean(inputs['air']) }));
    const last = log.current.at(-1);
    // A slider that is drawn makes one line, not fifty.
    if ('pressure' in inputs && last && last.mark === marks['pressure'] && time() - last.time < 2) { last.text = text; return; }
    tell({ time: time(), text, mark: marks[Object.keys(inputs)[0]!] ?? '', loud: Boolean(inputs['stop'] || inputs['emergency_stop']), track: -1 });
  }, [loop, tell, time]);

  const emergency = useCallback(() => {
    if (loop.over) return;
    setHand((h) => ({ ...h, stopped: true }));
    act({ emergency_stop: true }, 'emergency stop');
    if (!wholeAsked.current) loop.playing = true;
    tick();
  }, [loop, act, tick]);
  const reset = () => {
    setHand((h) => ({ ...h, stopped: false }));
    tell({ time: time(), text: 'emergency stop reset', mark: 'reset', loud: false, track: -1 });
  };
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented) return;
      event.preventDefault();
      emergency();
    };
    addEventListener('keydown', key);
    return () => removeEventListener('keydown', key);
  }, [emergency]);

  const play = (on: boolean) => { loop.playing = on && !loop.over; dirty.current = true; tick(); };
  const faster = (factor: number) => { setSpeed(factor); loop.factor = factor; dirty.current = true; };
  const unwound = (tracks: Track[]) => Math.max(0, Math.min(...tracks.map((one) =>
    (facts.full ** 2 - one.state.diameter ** 2) / Math.max(1e-12, facts.full ** 2 - facts.core ** 2))));
  const whole = async () => {
    if (wholeAsked.current) { wholeAsked.current = false; return; }
    wholeAsked.current = true;
    loop.playing = false;
    if (loop.tracks[0] && loop.tracks[0].state.line_speed < 1e-6 && !hand.stopped && job?.speed)
      act({ line_speed: job.speed }, 'whole roll: line to job speed');
    show({ whole: 0 });
    // Rows enough for every pixel of a strip, and no more calls than that takes.
    const chunk = Math.min(60, Math.max(2, (job?.roll_facts?.running_time ?? 3000) / 1200));
    await loop.whole(chunk, async (tracks) => {
      show({ whole: unwound(tracks) });
      draw();
      await new Promise((done) => requestAnimationFrame(done));
      return wholeAsked.current;
    });
    draw();
    wholeAsked.current = false;
    dirty.current = true;
    setSpan((before) => before ?? Infinity);
    show({ whole: undefined });
  };

  const onCanvas = useMemo(() => [0, 1].map((i) => (made: Canvas | null) => { canvases.current[i] = made; dirty.current = true; }), []);
  const onMover = useCallback((made: Move) => { move.current = made; dirty.current = true; }, []);
  const choose = (name: string) => { setControl(name); if (name === other) setOther(undefined); };
  const ready = shown.ready && loop.tracks.length > 0;

  return {
    loop, tracks: loop.tracks, names, control, other, speed, span, hand, looked, fit, facts, job, shown, ready,
    over: ready && loop.over, log: log.current, time, view,
    choose, setOther, setSpan, setLooked, act, emergency, reset, play, faster, whole, onCanvas, onMover, anew: () => setAgain(again + 1),
  };
}
