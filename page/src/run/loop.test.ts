import { describe, expect, it } from 'vitest';
import type { Core } from '../contract';
import { example_state } from '../drawing/example';
import { merged, RunLoop } from './loop';

/** A core that answers when it is told to, and counts what is on its way. */
class FakeCore implements Core {
  asked: { run: number; seconds: number; inputs: Record<string, unknown> }[] = [];
  closed: number[] = [];
  most = 0;
  hold = false;
  coreAt = Infinity;
  private flying = new Map<number, number>();
  private time = new Map<number, number>();
  private waiting: (() => void)[] = [];
  private last = 0;
  answer = () => Promise.resolve({});
  liveOpen = (request: any) => {
    if (request.compare[0] === 'nothing') return Promise.resolve({ outcome: 'bad_input', problems: [] });
    this.time.set(++this.last, 0);
    return Promise.resolve({ run: this.last, state: example_state({ time: 0, web_run: 0 }) });
  };
  liveAdvance = async (run: number, seconds: number, inputs: Record<string, unknown>) => {
    this.asked.push({ run, seconds, inputs });
    this.flying.set(run, (this.flying.get(run) ?? 0) + 1);
    this.most = Math.max(this.most, this.flying.get(run)!);
    if (this.hold) await new Promise<void>((done) => this.waiting.push(done));
    else await Promise.resolve();
    this.flying.set(run, this.flying.get(run)! - 1);
    const time = this.time.get(run)! + seconds;
    this.time.set(run, time);
    return { run, state: example_state({ time, web_run: 3 * time, at_core: time >= this.coreAt }) };
  };
  liveLeap = async (runs: number[], step: number, _within: number, inputs: Record<string, unknown>) => {
    const steps: any[][] = [];
    for (let i = 0; i < 3; ++i) steps.push(await Promise.all(runs.map((run) => this.liveAdvance(run, step, i === 0 ? inputs : {}))));
    return steps;
  };
  liveClose = (run: number) => { this.closed.push(run); return Promise.resolve(); };
  release(): void { this.waiting.splice(0).forEach((done) => done()); }
}
const settle = async () => { for (let i = 0; i < 10; ++i) await Promise.resolve(); };
const stand = { name: 'stand', text: '' };

async function running(controls = ['hand']) {
  const core = new FakeCore();
  const steps: number[] = [], faults: string[] = [];
  const loop = new RunLoop(core, (tracks) => steps.push(tracks[0]!.state.time), (what) => faults.push(what));
  await loop.open(stand, 'job', controls);
  loop.playing = true;
  loop.frame(0);
  await settle();
  core.asked = [];
  return { core, loop, steps, faults };
}

describe('the run loop', () => {
  it('never has two advances of a run on their way', async () => {
    const { core, loop } = await running();
    core.hold = true;
    for (let now = 16; now < 400; now += 16) loop.frame(now);
    await settle();
    expect(core.asked).toHaveLength(1);
    core.release(); await settle();
    loop.frame(416); loop.frame(432); await settle();
    expect(core.asked).toHaveLength(2);
    expect(core.most).toBe(1);
  });

  it('makes up the time that passed while an answer was on its way', async () => {
    const { core, loop } = await running();
    core.hold = true;
    loop.frame(20); loop.frame(40); loop.frame(60); await settle();
    core.release(); await settle();
    loop.frame(80); await settle();
    expect(core.asked.map((one) => one.seconds)).toEqual([0.02, 0.06]);
  });

  it('asks for a hundred times the frame at 100 ×', async () => {
    const { core, loop } = await running();
    loop.factor = 100;
    loop.frame(20); await settle();
    expect(core.asked[0]!.seconds).toBeCloseTo(2, 9);
  });

  it('does not leap when the page has slept', async () => {
    const { core, loop } = await running();
    loop.frame(3_600_000); await settle();
    expect(core.asked[0]!.seconds).toBe(0.25);
  });

  it('stands while paused, but does at once what a hand does', async () => {
    const { core, loop } = await running();
    loop.playing = false;
    loop.frame(50); await settle();
    expect(core.asked).toEqual([]);
    loop.send({ pairs: 1 });
    loop.frame(66); await settle();
    expect(core.asked).toEqual([{ run: 1, seconds: 0, inputs: { pairs: 1 } }]);
  });

  it('gives two runs the same time and the same inputs', async () => {
    const { core, loop } = await running(['hand', 'dancer']);
    loop.send({ pairs: 1 });
    loop.frame(20); await settle();
    expect(core.asked).toEqual([{ run: 1, seconds: 0.02, inputs: { pairs: 1 } }, { run: 2, seconds: 0.02, inputs: { pairs: 1 } }]);
  });

  it('runs a whole roll and keeps the strips', async () => {
    const { core, loop } = await running();
    loop.playing = false;
    core.coreAt = 100;
    await loop.whole(2, () => Promise.resolve(true));
    expect(loop.over).toBe(true);
    expect(core.most).toBe(1);
    expect(loop.tracks[0]!.strips.end).toBe(100);
    expect(loop.tracks[0]!.strips.count).toBe(51);
    expect(loop.in_flight).toBe(false);
  });

  it('computes the next stretch of a whole roll while the last is drawn', async () => {
    const { core, loop } = await running();
    loop.playing = false;
    const [asked, seen]: number[][] = [[], []];
    await loop.whole(2, async (tracks) => {
      await settle();
      seen!.push(tracks[0]!.state.time);
      asked!.push(core.asked.length);
      return seen!.length < 3;
    });
    expect(seen).toEqual([6, 12, 18, 24]); // the one on its way when it was halted is taken
    expect(asked).toEqual([6, 9, 12, 12]);
  });

  it('halts a whole roll when asked', async () => {
    const { loop } = await running();
    loop.playing = false;
    await loop.whole(2, () => Promise.resolve(false));
    expect(loop.over).toBe(false);
    expect(loop.in_flight).toBe(false);
    expect(loop.tracks[0]!.state.time).toBe(12);
  });

  it('gives what a hand does during a whole roll to the next stretch, and ends when the line stands', async () => {
    const { core, loop } = await running();
    loop.playing = false;
    core.liveAdvance = async (run, seconds, inputs) => {
      core.asked.push({ run, seconds, inputs });
      return { run, state: example_state({ time: 2 * core.asked.length, web_run: 5 }) };
    };
    let sent = false;
    await loop.whole(2, () => {
      if (!sent) loop.send({ emergency_stop: true });
      sent = true;
      return Promise.resolve(true);
    });
    expect(core.asked.filter((one) => 'emergency_stop' in one.inputs)).toHaveLength(1);
    expect(loop.over).toBe(false);
    expect(core.asked.length).toBeLessThan(140);
  });

  it('forgets the answers of a run that was closed', async () => {
    const { core, loop, steps } = await running();
    core.hold = true;
    loop.frame(16); await settle();
    const before = steps.length;
    loop.close(); core.release(); await settle();
    expect(steps.length).toBe(before);
    expect(core.closed).toEqual([1]);
  });

  it('says what ended the run when the core stops', async () => {
    const { core, loop, faults } = await running();
    core.liveAdvance = () => Promise.reject(new Error('worker gone'));
    loop.frame(16); await settle();
    expect(faults).toEqual(['worker gone']);
    expect(loop.tracks).toEqual([]);
    core.liveAdvance = () => Promise.resolve({ problem: 'no such run; open one first' } as any);
    await loop.open(stand, 'job', ['hand']);
    loop.send({ pairs: 9999 }); loop.frame(32); await settle();
    expect(faults[1]).toBe('no such run; open one first');
  });

  it('hands on a refusal and closes what was opened beside it', async () => {
    const core = new FakeCore();
    const loop = new RunLoop(core, () => undefined, () => undefined);
    const opened = await loop.open(stand, 'job', ['hand', 'nothing']);
    expect(opened.refused).toMatchObject({ outcome: 'bad_input' });
    expect(core.closed).toEqual([1]);
    expect(loop.over).toBe(true);
  });
});

describe('inputs between two advances', () => {
  it('the later wins, and takes back what it contradicts', () => {
    expect(merged({ pressure: 1e5 }, { automatic: true })).toEqual({ automatic: true });
    expect(merged({ automatic: true }, { pressure: 1e5 })).toEqual({ pressure: 1e5 });
    expect(merged({ pairs: 1 }, { pairs: 2 })).toEqual({ pairs: 2 });
    expect(merged({ line_speed: 3, within: 2 }, { stop: true })).toEqual({ stop: true });
    expect(merged({ line_speed: 3 }, { emergency_stop: true })).toEqual({ emergency_stop: true });
    expect(merged({ line_speed: 3, within: 5 }, { line_speed: 2 })).toEqual({ line_speed: 2 });
  });

  it('nothing undoes an emergency stop', () => {
    expect(merged({ emergency_stop: true }, { line_speed: 3, within: 1 })).toEqual({ emergency_stop: true });
    expect(merged({ emergency_stop: true }, { stop: true })).toEqual({ emergency_stop: true });
  });
});
