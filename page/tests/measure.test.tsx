// @vitest-environment happy-dom
// The Measure area on answers written by hand after the core's own field tables.
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { CoreClient } from '../src/core/client';
import { base64Of, emptyTable, entered, hasRows, parted, readingsOf, tableCsv } from '../src/measure/entered';
import { logCharts } from '../src/measure/Log';
import { Measure } from '../src/measure/Measure';
import { depthChart, entryWords } from '../src/measure/PadHistory';
import { readingsChart } from '../src/measure/BrakeReadings';
import { App } from '../src/store/app';
import { AppContext } from '../src/ui/context';
import type { Amount } from '../src/units';

const amount = (value: number, unit: string, kind: string) => ({ value, unit, kind });
const note = (text: string, pattern = text, amounts: Amount[] = []) => ({ text, pattern, amounts });

const fields = [
  { key: 'span', kind: 'short_length', unit: 'm', needed: true, from_web: false, help: 'between the rollers', step: amount(0.001, 'm', 'short_length') },
  { key: 'force', kind: 'force', unit: 'N', needed: true, from_web: false, help: 'on the gauge', step: amount(0.1, 'N', 'force') },
  { key: 'width', kind: 'short_length', unit: 'm', needed: false, from_web: true, help: 'of the web' },
  { key: 'place', kind: 'short_length', unit: 'm', needed: false, from_web: false, help: 'from the nearer roller', otherwise: amount(0.6, 'm', 'short_length') },
];
const instruction = { title: 'Push the span sideways', idea: 'pushing takes a force', steps: [note('push by 20 mm', 'push by {0}', [amount(0.02, 'm', 'short_length')])], cautions: [note('keep clear of nips')], expected: [], fields };
const measured = {
  method: 'push', job: 'x', tension: 150, per_width: 250, uncertainty: 3, freedom: 7.6, coverage: 2.31, expanded: 6.9,
  budget: [{ key: 'force', name: 'force', value: amount(12, 'N', 'force'), uncertainty: amount(0.1, 'N', 'force'), sensitivity: 12.5, contribution: 2.8, share: 0.87, readings: 3, origin: note('of three readings') }],
  parts: [
    { key: 'pushed_stress', name: 'stress while pushed', value: amount(31e6, 'Pa', 'stress'), uncertainty: amount(1e6, 'Pa', 'stress') },
    { key: 'added_strain', name: 'strain that the push adds', value: amount(0.0056, '1', 'ratio'), uncertainty: amount(0.0001, '1', 'ratio') },
  ],
  window: { job: 'x', low: 140, high: 160, setpoint: 150, probability: 0.98, state: 'inside', verdict: note('the tension lies inside the window') },
  simple: { formula: 'F S/(4 push)', tension: 165, error: 15, error_share: 0.1 }, better: { key: 'force', what: note('read the force more often'), uncertainty: 2 },
  methods: [{ method: 'pluck', possible: true, uncertainty: 1.5, share: 0.01, why: note('the span is what limits it') }, { method: 'sag', possible: false, uncertainty: 0, share: 0, why: note('no basis weight') }],
  instruction, assumptions: [note('the web is elastic')], cautions: [],
};

describe('what is entered', () => {
  it('is parted into readings, each with its own text', () => {
    expect(parted(' 11.9 N; 12.1 N\n12 N ;; ')).toEqual(['11.9 N', '12.1 N', '12 N']);
    expect(readingsOf({ span: '1200 mm', force: '1 N; 2 N', place: ' ' })).toEqual({ span: ['1200 mm'], force: ['1 N', '2 N'] });
    expect(readingsOf(undefined)).toEqual({});
  });
  it('becomes a table whose rows keep their numbers', () => {
    expect(tableCsv([['a', 'b, c', ''], ['1', '', ''], ['', '', ''], ['2', '"x"', ''], ['', '', '']])).toBe('a,"b, c"\n1,\n,\n2,"""x"""\n');
    expect(hasRows(emptyTable())).toBe(false);
    expect(hasRows([['a'], ['']])).toBe(false);
    expect(hasRows([['a'], ['1']])).toBe(true);
  });
  it('as bytes is base64 (RFC 4648, section 10)', () => {
    const bytes = (text: string) => new TextEncoder().encode(text);
    expect(['', 'f', 'fo', 'foo', 'foobar'].map((text) => base64Of(bytes(text)))).toEqual(['', 'Zg==', 'Zm8=', 'Zm9v', 'Zm9vYmFy']);
    expect(base64Of(new Uint8Array(100_000))).toHaveLength(Math.ceil(100_000 / 3) * 4);
  });
});

describe('charts', () => {
  const fit = { sufficient: true, readings: [{ pressure: 2e5, torque: 20, fitted: 21, pairs: 2, outlier: false }, { pressure: 1e5, torque: 11, fitted: 10, pairs: 2, outlier: false }, { pressure: 1e5, torque: 40, fitted: 10, pairs: 2, outlier: true }] };
  it('show readings as points, the fit as a line, what is left out apart', () => {
    const { series } = readingsChart(fit);
    expect(series.map((one) => [one.name, one.marks ?? 'line'])).toEqual([['fitted, 2 pairs', 'line'], ['read', 'points'], ['left out', 'points']]);
    expect(series[1]).toMatchObject({ at: [1e5, 2e5], values: [11, 20] });
    expect(readingsChart({ ...fit, sufficient: false }).series.map((one) => one.name)).toEqual(['read', 'left out']);
  });
  it('of a log leave out what it has not', () => {
    const found = { tension: { low: 90, high: 110 }, trace: [{ time: 0, tension: 100 }, { time: 1 }, { time: 2, tension: 104 }], by_frequency: { place: [1, 2], amplitude: [0.1, 3], floor: [0.2, 0.2] }, by_order: { place: [] } };
    const charts = logCharts(found);
    expect(charts.map((one) => one.title)).toEqual(['Tension', 'Spectrum over frequency']);
    expect(charts[0]!.series.map((one) => one.name)).toEqual(['mean', 'upper bound', 'lower bound']);
    expect(charts[0]!.series[0]!.values).toEqual([100, null, 104]);
  });
  it('of a history run from the first date', () => {
    const history = { courses: [{ points: [{ date: '2026-01-01', depth: 0.012 }, { date: '2026-01-15', depth: 0.010 }] }, { until: '2025-12-31', points: [{ date: '2025-01-01', depth: 0.012 }] }], forecast: { band: { day: [20468, 20475], low: [0.009, 0.008], middle: [0.01, 0.009], high: [0.011, 0.01] } } };
    const chart = depthChart(history)!;
    expect(chart.x.name).toBe('time from 2026-01-01');
    expect(chart.series[0]!.at).toEqual([0, 14 * 86400]);
    expect(chart.series[1]!.at![0]).toBe((20468 - Date.UTC(2026, 0, 1) / 86400e3) * 86400);
    expect(depthChart({ courses: [], forecast: null })).toBeNull();
    expect(entryWords({ brake: 'front', pair: '2', hottest: true, depth: 0.0104, text: 'as new' }, 'si').replace(/\u00a0/g, ' ')).toBe('brake front, pair 2, the hottest; depth 10.4 mm; as new');
  });
});

describe('the area', () => {
  let place: HTMLElement;
  let asked: any[];
  let answers: (request: any) => any;
  let app: App;
  beforeEach(() => {
    asked = [];
    answers = (request) => (request.instruction ? { problems: [], measurement: { method: request.method, instruction, methods: measured.methods } } : { problems: [], measurement: { ...measured, method: request.method } });
    const core = { ask: (_: string, request: any) => { asked.push(request); return Promise.resolve(answers(request)); } } as unknown as CoreClient;
    app = new App(core, core);
    entered.set({ topic: 'tension', method: 'push', readings: {}, recording: null, table: emptyTable(), tableName: 'readings', brake: '', grade: '', log: null, columns: '', rate: '', from: '', to: '', history: null });
    place = document.createElement('div');
    document.body.append(place);
  });
  afterEach(() => {
    render(null, place);
    place.remove();
    vi.restoreAllMocks();
  });
  const draw = () => act(() => render(<AppContext.Provider value={{ app, core: null as any }}><Measure /></AppContext.Provider>, place));
  const settle = (ms = 180) => act(() => new Promise<void>((done) => setTimeout(done, ms)));
  const until = async (there: () => boolean) => { for (let i = 0; i < 200 && !there(); ++i) await settle(10); expect(there()).toBe(true); };
  const words = () => place.textContent.replace(/\u00a0/g, ' ');
  const button = (text: string) => [...place.querySelectorAll('button')].find((one) => one.textContent.trim() === text)!;
  const type = (id: string, text: string) => until(() => place.querySelector(`#${id}`) !== null).then(() => act(() => {
    const input = place.querySelector<HTMLInputElement>(`#${id}`)!;
    input.value = text;
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }));

  it('makes its form of the core’s own keys, and asks only for what is written', async () => {
    await draw();
    await until(() => words().includes('Push the span sideways'));
    expect([...place.querySelectorAll('.field label')].map((one) => one.textContent)).toEqual(['span needed', 'force needed', 'width', 'place']);
    expect(place.querySelector<HTMLInputElement>('#reading-place')!.placeholder.replace(/\u00a0/g, ' ')).toBe('taken: 600 mm');
    expect(place.querySelector<HTMLInputElement>('#reading-width')!.placeholder).toBe('from the job');
    expect(asked.filter((one) => one.command === 'measure' && !one.instruction)).toHaveLength(0);
    await type('reading-span', '48 in');
    await type('reading-force', '12.1 N; 11.9 N');
    await until(() => words().includes('150 N ± 6.90 N'));
    expect(asked.at(-1)).toMatchObject({ command: 'measure', method: 'push', readings: { span: ['48 in'], force: ['12.1 N', '11.9 N'] } });
    expect(words()).toContain('= 1219 mm');
    expect(words()).toContain('The tension lies inside the window.');
    expect(words()).toContain('15.0 N too high (10.0 %)');
    expect(words()).toContain('not to be told No basis weight.');
    // Stress shares its unit with pressure, a strain with a plain number.
    expect(words()).toContain('stress while pushed31.0 MPa ± 1.00 MPa');
    expect(words()).toContain('strain that the push adds0.560 % ± 0.0100 %');
  });

  it('shows everything in the reader’s units, and asks for nothing new', async () => {
    await draw();
    await type('reading-span', '1200 mm');
    await until(() => words().includes('150 N ± 6.90 N'));
    const before = asked.length;
    await act(() => app.show({ units: 'us' }));
    await settle();
    expect(words()).toContain('33.7 lbf ± 1.55 lbf');
    expect(words()).toContain('= 47.2 in');
    expect(words()).toContain('Push by 0.787 in.');
    expect(words()).toContain('stress while pushed4496 psi ± 145 psi');
    expect(asked.filter((one) => one.command === 'measure').length).toBe(asked.slice(0, before).filter((one) => one.command === 'measure').length);
  });

  it('tells what is wrong at the reading that it is about', async () => {
    const instruct = answers;
    answers = (request) => (request.instruction ? instruct(request) : { outcome: 'bad_input', problems: [{ severity: 'error', field: 'force', what: note('a bare number has no unit'), accepted: note('12 N'), line: 0 }, { severity: 'warning', field: '--job', what: note('none is named'), accepted: note(''), line: 0 }] });
    await draw();
    await until(() => place.querySelector('#reading-force') !== null);
    await type('reading-force', '12');
    await until(() => place.querySelector('#reading-force-trouble') !== null);
    expect(place.querySelector('#reading-force')!.getAttribute('aria-invalid')).toBe('true');
    expect(place.querySelector('.found')!.textContent).toContain('None is named');
    expect(place.querySelector('.found')!.textContent).not.toContain('bare number');
  });

  it('fits a brake to pasted readings and takes it over into the stand file', async () => {
    entered.set({ topic: 'brake' });
    answers = (request) => ({ problems: [], fit: {
      title: 's', fit: { brakes: 1, brake: 'D300', grade: 'standard', pairs: 2 }, readings: [{ row: 2, pressure: 1e5, pairs: 2, torque: 11, fitted: 10, residual: 1, outlier: false }], outliers: 0, sufficient: true,
      torque_per_pressure: 5e-5, torque_per_pressure_low: 4e-5, torque_per_pressure_high: 6e-5, torque_per_pressure_in_file: 7e-5, median_torque_per_pressure: 5e-5, friction_share: 0.7, friction_share_low: 0.6, friction_share_high: 0.8,
      band_low: 0.8, band_high: 1.2, threshold: 2e4, threshold_low: 1e4, threshold_high: 3e4, threshold_in_file: 1e4, drag: 1, drag_low: 0, drag_high: 2, drag_in_file: 1, drag_read: false, hysteresis_share: 0, scatter: 0.4,
      verdicts: [{ cause: 'wrong_grade', share: 0.9, grade: 'soft', pair: 0, what: note('another grade is fitted'), evidence: note('the slope is low'), remedy: note('look at the pads') }], not_told: [], next: [],
      changes: [{ owner: 'brake "D300"', key: 'threshold', before: '0.1 bar', after: '0.2 bar' }], stand_file: request.stand.text.replace('film', 'FILM'), assumptions: [], cautions: [],
    } });
    await draw();
    const cell = place.querySelector<HTMLInputElement>('td[data-row="1"][data-column="0"] input')!;
    const data = { getData: () => 'pressure [bar]\ttorque [N*m]\tpairs\n1\t11\t2\n2\t21\t2\n' };
    await act(() => void cell.dispatchEvent(Object.assign(new Event('paste', { bubbles: true, cancelable: true }), { clipboardData: data })));
    await until(() => words().includes('Another grade is fitted.'));
    expect(asked.at(-1).table).toEqual({ name: 'readings', text: 'pressure [bar],torque [N*m],pairs\n1,11,2\n2,21,2\n' });
    expect(place.querySelectorAll('.chart .point.main')).toHaveLength(1);
    const before = app.state.history.now;
    await act(() => button('Take over into the stand file').click());
    expect(app.state.history.now).toBe(before.replace('film', 'FILM'));
    await act(() => app.undo());
    expect(app.state.history.now).toBe(before);
  });

  it('judges a log and a history that were given to it', async () => {
    entered.set({ topic: 'log', log: { name: 'line.csv', text: 't,F\n0,1\n' }, columns: 'time=t [s]' });
    answers = () => ({ problems: [], diagnosis: { title: 's', verdict: note('the roll is out of round'), state: 'fails', job: 'x', tension: { low: 90, high: 110 }, causes: [{ kind: 'runout', confidence: 0.9, what: note('the roll is out of round'), evidence: [note('order 1 stands out')], to_try: [note('look at the core')], to_tell_apart: note('') }], phases: [], changes: [], peaks: [], assumptions: [], cautions: [] } });
    await draw();
    await until(() => words().includes('Order 1 stands out.'));
    expect(asked.at(-1)).toMatchObject({ command: 'diagnose', log: { name: 'line.csv' }, columns: 'time=t [s]' });
    expect(words()).toContain('At most 60 MB on the page');
    expect(['rate', 'from', 'to'].filter((key) => key in asked.at(-1))).toEqual([]);
    answers = () => ({ outcome: 'bad_input', problems: [{ severity: 'error', field: '--rate', what: note('a bare word is no rate'), accepted: note('such as 1000 Hz'), line: 0 }, { severity: 'error', field: '--columns', what: note('no column “a”'), accepted: note('t'), line: 0 }, { severity: 'error', field: '--columns', what: note('no column “b”'), accepted: note('t'), line: 0 }] });
    await type('log-rate', '100 Hz');
    await type('log-from', '10 min');
    await type('log-to', ' ');
    await until(() => place.querySelector('#log-rate-trouble') !== null);
    expect(asked.at(-1)).toMatchObject({ command: 'diagnose', columns: 'time=t [s]', rate: '100 Hz', from: '10 min' });
    expect(asked.at(-1)).not.toHaveProperty('to');
    expect(place.querySelector('#log-rate-trouble')!.textContent).toBe('A bare word is no rate. Accepted: such as 1000 Hz.');
    expect(place.querySelector('#log-columns-trouble')!.textContent).toContain('“b”');
    expect(place.querySelector('.found')).toBeNull();
    answers = () => ({ problems: [], history: { stand: 'Slitter 2', entries: [{ number: 1, date: '2026-01-12', kind: 'pads', depth: 0.012, corrected_by: 0 }], courses: [], measure_next: [note('measure the pads twice')], trends: [], assumptions: [], cautions: [] } });
    await act(() => entered.set({ topic: 'history', history: { name: 'h.csv', text: 'number\n1\n' } }));
    await until(() => words().includes('Measure the pads twice.'));
    expect(words()).toContain('Not to be told yet');
    expect(words()).toContain('2026-01-12');
  });
});
