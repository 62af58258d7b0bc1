// @vitest-environment happy-dom
/** The components of Run as a hand meets them, on a core that only counts what it is asked. */
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Core, StandView } from '../contract';
import { example, example_check, example_state } from '../drawing/example';
import { Controls } from './Controls';
import { Readouts, StripTable, Words } from './Readouts';
import { Caution, RunArea } from './RunArea';
import { Strips } from './strips';

let place: HTMLElement;
beforeEach(() => {
  place = document.createElement('div');
  document.body.append(place);
});
afterEach(() => {
  render(null, place);
  place.remove();
});
const draw = (what: preact.ComponentChild) => act(() => render(what, place));
const button = (name: string | RegExp) => {
  const found = [...place.querySelectorAll('button')].find((one) => (typeof name === 'string' ? one.textContent === name || one.getAttribute('aria-label') === name : name.test(one.textContent)));
  if (!found) throw new Error(`no button ${name}`);
  return found;
};
const click = (name: string | RegExp) => act(() => button(name).click());
const input = (label: string) => [...place.querySelectorAll('label')].find((one) => one.textContent.startsWith(label))!.querySelector('input')!;
const type = async (into: HTMLInputElement, text: string) => {
  into.value = text;
  await act(() => void into.dispatchEvent(new Event('input', { bubbles: true })));
};
const key = (target: EventTarget, name: string) => act(() => void target.dispatchEvent(new KeyboardEvent('keydown', { key: name, bubbles: true, cancelable: true })));
const until = async (there: () => boolean) => { for (let i = 0; i < 400 && !there(); ++i) await settle(5); expect(there()).toBe(true); };
const settle = (ms = 0) => act(() => new Promise<void>((done) => setTimeout(done, ms)));

const stand: StandView = { text: 'a stand', file: example, check: example_check, job: 'clear film', units: 'si' };
const track = (control: string, changed = {}, run = 1) => {
  const strips = new Strips(16);
  for (let i = 0; i < 5; ++i) strips.add(example_state({ time: i, tension: 80 + i, lowest_tension: 70, highest_tension: 95 }));
  return { control, run, state: example_state({ time: 4, ...changed }), strips, over: false };
};

describe('the controls', () => {
  const shown = (more: Record<string, unknown> = {}) => {
    const acted = vi.fn();
    const props = { units: 'si' as const, state: example_state({ pairs: 2, line_speed: 1, set_pressure: 1e5 }), ready: true, pairs: 3, highest: 6e5, topSpeed: 10, jobSpeed: 3, hand: { byHand: false, air: true, stopped: false }, act: acted, ...more };
    return draw(<Controls {...props} />).then(() => acted);
  };

  it('engage and release pad pairs within what is fitted', async () => {
    const acted = await shown();
    await click('engage a pair');
    expect(acted).toHaveBeenLastCalledWith({ pairs: 3 }, '3 of 3 pad pairs engaged');
    await click('release a pair');
    expect(acted).toHaveBeenLastCalledWith({ pairs: 1 }, '1 of 3 pad pairs engaged');
    await shown({ state: example_state({ pairs: 3 }) });
    expect(button('engage a pair').disabled).toBe(true);
    await shown({ state: example_state({ pairs: 0 }) });
    expect(button('release a pair').disabled).toBe(true);
  });

  it('take a number in the reader’s unit, on Enter, and keep it within bounds', async () => {
    const acted = await shown({ units: 'us' });
    expect(place.textContent).toContain('pressure [psi]');
    await type(input('pressure'), '30');
    expect(acted).not.toHaveBeenCalled();
    await key(input('pressure'), 'Enter');
    // 1 psi is 6894.757 Pa (NIST SP 811).
    expect((acted.mock.lastCall![0] as { pressure: number }).pressure).toBeCloseTo(206842.7, 1);
    await type(input('pressure'), '9999');
    await key(input('pressure'), 'Enter');
    expect(acted.mock.lastCall![0]).toEqual({ pressure: 6e5 });
    await type(input('pressure'), '1');
    await key(input('pressure'), 'Escape');
    expect(acted).toHaveBeenCalledTimes(2);
  });

  it('send the line to a speed within a time, to the job’s speed, or to a stop', async () => {
    const acted = await shown();
    await type(input('within'), '4');
    await click(/^ramp to/);
    expect(acted).toHaveBeenLastCalledWith({ line_speed: 3, within: 4 }, 'line to 180 m/min in 4.00 s');
    await click('stop');
    expect(acted).toHaveBeenLastCalledWith({ stop: true }, 'normal stop');
  });

  it('hold the line while an emergency stop is latched, but leave pads and air to the hand', async () => {
    await shown({ hand: { byHand: true, air: false, stopped: true } });
    expect([button(/^ramp to/).disabled, button('stop').disabled, input('speed').disabled]).toEqual([true, true, true]);
    expect([button('engage a pair').disabled, button('air back on').disabled]).toEqual([false, false]);
    expect(button('air back on').getAttribute('aria-pressed')).toBe('true');
  });

  it('do nothing before there is a run', async () => {
    await shown({ ready: false, state: undefined });
    for (const one of place.querySelectorAll('button, input')) if (!one.closest('label')?.textContent.startsWith('within')) expect((one as HTMLButtonElement).disabled, one.textContent).toBe(true);
  });
});

describe('numbers and words', () => {
  it('of one run are a list, of two a table', async () => {
    await draw(<Readouts tracks={[track('hand')]} units="si" />);
    expect([...place.querySelectorAll('dt')].map((one) => one.textContent)).toContain('slip power');
    await draw(<Readouts tracks={[track('hand'), track('dancer', {}, 2)]} units="us" />);
    expect([...place.querySelectorAll('thead th')].map((one) => one.textContent)).toEqual(['now', 'hand', 'dancer']);
    expect(place.textContent).toContain('lbf');
  });
  it('say what is wrong with a mark, not by colour alone', async () => {
    await draw(<Words track={track('hand', { slack: 0.01, tension: 0 })} name="hand" />);
    expect(place.querySelector('.is-bad')!.textContent).toBe('▲ slack');
  });
  it('of the strips are lowest and highest over what is shown', async () => {
    await draw(<StripTable tracks={[track('hand')]} view={{ begin: 0, end: 4 }} units="si" />);
    const row = [...place.querySelectorAll('tbody tr')].find((one) => one.textContent.startsWith('tension'))!;
    expect([...row.querySelectorAll('td')].map((one) => one.textContent)).toEqual(['70.0 N', '95.0 N']);
  });
  it('of caution stand each on a line of their own', async () => {
    await draw(<Caution r={{ facts: { guard: 'none', disc: { rated: 523.15 } } as any }} stand={stand} />);
    const lines = [...place.querySelectorAll('li')].map((one) => one.textContent);
    expect(lines).toContain('This stand has no guard around its disc.');
    expect(lines).toContain('The disc is rated to 250 °C.');
    for (const line of lines) expect(line.length).toBeLessThan(90);
  });
});

describe('the stand under way', () => {
  const asked: { run: number; seconds: number; inputs: Record<string, unknown> }[] = [];
  const fake = (refusal?: unknown): Core => {
    const time = new Map<number, number>();
    let last = 0;
    const step = (run: number, seconds: number, inputs: Record<string, unknown>) => {
      asked.push({ run, seconds, inputs });
      time.set(run, (time.get(run) ?? 0) + seconds);
      return { run, state: example_state({ time: time.get(run)!, web_run: time.get(run)!, line_speed: inputs['emergency_stop'] ? 0 : 2 }) };
    };
    return {
      answer: () => Promise.resolve({}),
      liveOpen: () => Promise.resolve(refusal ?? { run: ++last, state: example_state({ time: 0, line_speed: 0 }) }),
      liveAdvance: (run, seconds, inputs) => Promise.resolve(step(run, seconds, inputs)),
      liveLeap: (runs, seconds, _, inputs) => Promise.resolve([runs.map((run) => step(run, seconds, inputs))]),
      liveClose: () => Promise.resolve(),
    };
  };
  beforeEach(() => void asked.splice(0));

  it('starts, runs on by the frame, and pauses', async () => {
    await draw(<RunArea core={fake()} stand={stand} theme="light" />);
    await until(() => !button(/start$/).disabled);
    await click(/start$/);
    await until(() => asked.length > 1);
    await click(/pause$/);
    const before = asked.length;
    await settle(80);
    expect(asked.length).toBe(before);
  });

  it('obeys Escape at once, latches the stop and says so in the log', async () => {
    await draw(<RunArea core={fake()} stand={stand} theme="dark" />);
    await settle(20);
    await key(window, 'Escape');
    await until(() => asked.length > 0);
    await settle(250); // the log is drawn a few times a second
    expect(asked[0]!.inputs).toEqual({ emergency_stop: true });
    expect(button(/EMERGENCY STOP/).getAttribute('aria-pressed')).toBe('true');
    expect(place.querySelector('.rn-log')!.textContent).toContain('emergency stop');
    await click('reset emergency stop');
    expect(button(/EMERGENCY STOP/).getAttribute('aria-pressed')).toBe('false');
  });

  it('compares two controls in one run each', async () => {
    await draw(<RunArea core={fake()} stand={stand} theme="light" />);
    await settle(20);
    const other = place.querySelectorAll<HTMLSelectElement>('.rn-choice select')[1]!;
    other.value = 'diameter';
    await act(() => void other.dispatchEvent(new Event('change', { bubbles: true })));
    await settle(20);
    expect([...place.querySelectorAll('figcaption')].map((one) => one.textContent)).toEqual(['control by load cell', 'control by diameter']);
    await click(/start$/);
    await until(() => new Set(asked.map((one) => one.run)).size === 2);
  });

  it('says in words why a stand does not run', async () => {
    const refusal = { outcome: 'bad_input', problems: [{ severity: 'error', field: 'job', value: 'x', what: { text: 'the stand has no such job' }, accepted: { text: 'one of them' } }] };
    await draw(<RunArea core={fake(refusal)} stand={stand} theme="light" />);
    await settle(20);
    expect(place.querySelector('[role="alert"]')!.textContent).toContain('job “x”: the stand has no such job Accepted: one of them.');
    expect(button(/start$/).disabled).toBe(true);
  });
});
