// What is asked of the core, in which order, and that answers of two turns never stand together.
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { Superseded, type CoreClient } from '../src/core/client';
import { App, isCurrent, planOf } from '../src/store/app';

interface Asked { request: any; key: string; answer(of: any): Promise<void>; fail(error: Error): Promise<void> }

class FakeCore {
  asked: Asked[] = [];
  ask = (_call: string, request: any, how: { key: string }): Promise<unknown> => new Promise((done, fail) => {
    const settle = async () => { for (let i = 0; i < 4; ++i) await Promise.resolve(); };
    this.asked.push({ request, key: how.key, answer: (of) => { done(of); return settle(); }, fail: (error) => { fail(error); return settle(); } });
  });
  last(key: string): Asked {
    const found = [...this.asked].reverse().find((one) => one.key === key);
    if (!found) throw new Error(`nothing was asked as ${key}`);
    return found;
  }
  count = (key: string) => this.asked.filter((one) => one.key === key).length;
}

let quick: FakeCore;
let long: FakeCore;
let app: App;
let clock = 0;
const hard = 'PET 23 fast';
const brief = (job = hard) => ({ problems: [], choice: { brief: true, envelope: { job }, job: { job }, recommended: { jobs: [] } } });
const whole = (job = hard) => ({ problems: [], choice: { envelope: { job }, job: { job }, recommended: { jobs: [] } } });
const plan = (job: string) => ({ problems: [], plan: { jobs: [{ job }] } });

beforeEach(() => {
  vi.useFakeTimers();
  clock = 1000;
  quick = new FakeCore();
  long = new FakeCore();
  app = new App(quick as unknown as CoreClient, long as unknown as CoreClient, () => clock);
  app.ask();
});
const edit = (comment: string) => app.write(app.state.history.now + `# ${comment}\n`, '');

describe('answers', () => {
  it('come in brief first; the whole choice follows at once when nobody types', async () => {
    expect(quick.last('brief').request).toMatchObject({ command: 'size', all: true, brief: true });
    await quick.last('brief').answer(brief());
    expect(isCurrent(app.state)).toBe(true);
    expect(app.state.stale).toBe(true);
    vi.advanceTimersByTime(0);
    expect(long.last('size').request).not.toHaveProperty('brief');
    await long.last('size').answer(whole());
    expect(app.state.stale).toBe(false);
    expect(app.state.size.choice.brief).toBeUndefined();
  });

  it('of every keystroke are asked in brief; the whole choice waits until the hand rests', async () => {
    await quick.last('brief').answer(brief());
    vi.advanceTimersByTime(0);
    await long.last('size').answer(whole());
    for (const word of ['a', 'b', 'c']) {
      clock += 60;
      vi.advanceTimersByTime(60);
      edit(word);
      expect(isCurrent(app.state)).toBe(false);
      await quick.last('brief').answer(brief());
      expect(isCurrent(app.state)).toBe(true);
    }
    expect(quick.count('brief')).toBe(4);
    expect(long.count('size')).toBe(1);
    clock += 250;
    vi.advanceTimersByTime(250);
    expect(long.count('size')).toBe(2);
  });

  it('that are late are of no use', async () => {
    const first = quick.last('brief');
    edit('newer');
    await first.answer(brief('old'));
    expect(app.state.size).toBeNull();
    await quick.last('brief').answer(brief('new'));
    clock += 300;
    vi.advanceTimersByTime(300);
    const late = long.last('size');
    edit('newest');
    await late.answer(whole('old'));
    expect(app.state.size.choice.envelope.job).toBe('new');
    expect(app.state.stale).toBe(true);
  });

  it('in brief never take the place of a whole one of the same file', async () => {
    app.show({ area: 'choose' }); // asks again before the first has come
    const [a, b] = quick.asked.filter((one) => one.key === 'brief');
    await a!.answer(brief());
    vi.advanceTimersByTime(0);
    await long.last('size').answer(whole());
    await b!.answer(brief());
    expect(app.state.size.choice.brief).toBeUndefined();
    expect(app.state.stale).toBe(false);
  });

  it('of pressures stand beside the choice only where both are of one file', async () => {
    app.show({ area: 'choose' });
    await quick.last('brief').answer(brief());
    vi.advanceTimersByTime(0);
    await quick.last('plan').answer(plan(hard));
    expect(planOf(app.state)).not.toBeNull();
    edit('changed');
    expect(planOf(app.state)).not.toBeNull(); // both of the file before
    await quick.last('brief').answer(brief());
    expect(planOf(app.state)).toBeNull();
    expect(quick.count('plan')).toBe(1);
    clock += 250;
    vi.advanceTimersByTime(250);
    await quick.last('plan').answer(plan(hard));
    expect(planOf(app.state)).not.toBeNull();
  });

  it('that refuse the file end there', async () => {
    await quick.last('brief').answer({ outcome: 'bad_input', problems: [{ severity: 'error' }] });
    vi.advanceTimersByTime(1000);
    expect(app.state.stale).toBe(false);
    expect(app.state.problems.problems).toHaveLength(1);
    expect(long.count('size')).toBe(0);
  });

  it('for another job keep the whole choice on screen until its own comes', async () => {
    await quick.last('brief').answer(brief());
    vi.advanceTimersByTime(0);
    await long.last('size').answer(whole());
    const name = String(app.state.file.job[3].name);
    app.choose(name);
    expect(quick.count('brief')).toBe(1);
    expect(long.last('size').request.job).toBe(name);
    app.show({ area: 'papers' });
    expect(long.count('size')).toBe(2); // it is on its way
    expect(app.state.size.choice.brief).toBeUndefined();
    await long.last('size').fail(new Superseded());
    app.show({ area: 'choose' });
    expect(long.count('size')).toBe(3);
  });
});

describe('a workbook', () => {
  const sheets = [{ name: 'May', text: 'a\n' }, { name: 'June', text: 'b\n' }];
  it('of one sheet is taken, of several is asked for', () => {
    app.addBook('mix.xlsx', sheets);
    expect(app.state.sheet).toBeNull();
    expect(app.state.asking!.sheets).toHaveLength(2);
    app.chooseSheet(app.state.asking!, 1);
    expect(app.state.asking).toBeNull();
    expect(quick.last('brief').request.jobs).toEqual({ name: 'mix.xlsx', text: 'b\n', sheet: true });
    app.addBook('one.xlsx', sheets.slice(0, 1));
    expect(quick.last('brief').request.jobs).toEqual({ name: 'one.xlsx', text: 'a\n', sheet: true });
    app.addSheet({ name: 'jobs.csv', text: 'c\n' });
    expect(quick.last('brief').request.jobs).toEqual({ name: 'jobs.csv', text: 'c\n' });
    app.addSheet(null);
    expect(quick.last('brief').request).not.toHaveProperty('jobs');
  });
});
