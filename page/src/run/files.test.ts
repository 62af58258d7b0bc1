import { describe, expect, it } from 'vitest';
import { example_state } from '../drawing/example';
import { run_csv } from './csv';
import { clock_text, state_words, Watcher } from './events';
import type { Track } from './loop';
import { hatch_lines } from './pen';
import { strip_kinds, strip_range, ticks, time_ticks } from './plot';
import { file_name, run_svg } from './save';
import { Strips } from './strips';

function track(control: string): Track {
  const strips = new Strips(64);
  for (let i = 0; i <= 10; ++i) strips.add(example_state({ time: i, tension: 80 + i, lowest_tension: 79, highest_tension: 95 }));
  return { control, run: 1, state: example_state({ time: 10 }), strips, over: false };
}

describe('a run as CSV', () => {
  it('has a header with units and a row for each look', () => {
    const rows = run_csv([track('load cell')], 'si').trimEnd().split('\r\n');
    expect(rows[0]).toBe('control,from [s],to [s],lowest tension [N],highest tension [N],setpoint [N],window from [N],window to [N],slack [mm],'
      + 'pressure asked [bar],pressure at brake [bar],line speed [m/min],roll surface speed [m/min],slip power [W],disc temperature [°C],diameter [mm]');
    expect(rows).toHaveLength(12);
    expect(rows[3]).toBe('load cell,1,2,79,95,88,77.44,98.56,0,3.1,3,180,180,260,83.85,640');
  });

  it('has the other units without another result', () => {
    const [head, first] = run_csv([track('hand')], 'us').split('\r\n');
    expect(head).toContain('lowest tension [lbf]');
    // 88 N in lbf: 88/4.4482216 (NIST SP 811).
    expect(Number(first!.split(',')[5])).toBeCloseTo(19.7832, 3);
  });

  it('has both runs of a comparison, named', () => {
    const rows = run_csv([track('hand'), track('load cell, "fast"')], 'si').trimEnd().split('\r\n');
    expect(rows).toHaveLength(23);
    expect(rows[22]!.startsWith('"load cell, ""fast""",')).toBe(true);
  });
});

describe('a run as SVG', () => {
  it('is a document of its own with the title, every strip and the events', () => {
    const svg = run_svg([track('hand'), track('dancer')], { begin: 0, end: 10 }, 'si', [{ time: 5, text: '', mark: 'slack', loud: true, track: 0 }], 'clear film <1> & more');
    expect(svg.startsWith('<svg xmlns="http://www.w3.org/2000/svg"')).toBe(true);
    expect(svg).toContain('clear film &lt;1&gt; &amp; more');
    for (const kind of strip_kinds) expect(svg).toContain(`>${kind.name} [`);
    expect(svg).toContain('>slack</text>');
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('has a file name that any system takes', () => {
    expect(file_name('Job 7: film/30 µm', 'svg')).toBe('job-7-film-30-m-run.svg');
    expect(file_name('…', 'csv')).toBe('run-run.csv');
  });
});

describe('axes', () => {
  it('step by 1, 2 or 5, and time by sixties', () => {
    expect(ticks(0, 100, 4)).toEqual([0, 50, 100]);
    expect(ticks(0, 0, 4)).toEqual([]);
    expect(time_ticks(0, 3400, 8)).toEqual([0, 600, 1200, 1800, 2400, 3000]);
    expect(time_ticks(3, 23, 5)).toEqual([5, 10, 15, 20]);
  });

  it('hatch inside their box', () => {
    for (const [x0, y0, x1, y1] of hatch_lines(10, 20, 50, 30)) {
      for (const x of [x0!, x1!]) expect(x >= 10 && x <= 60).toBe(true);
      for (const y of [y0!, y1!]) expect(y >= 20 - 1e-9 && y <= 50 + 1e-9).toBe(true);
    }
    expect(hatch_lines(0, 0, 0, 5)).toEqual([]);
  });

  it('show the whole window of tension, also of an empty run', () => {
    const range = strip_range(strip_kinds[0]!, [track('hand').strips], { begin: 0, end: 10 });
    expect(range.high).toBeGreaterThan(98.56);
    expect(strip_range(strip_kinds[0]!, [new Strips(4)], { begin: 0, end: 10 })).toEqual({ low: 0, high: 1.12 });
  });
});

describe('what happens, in words', () => {
  const texts = (states: Record<string, unknown>[]) => {
    const watcher = new Watcher(0, '');
    return states.flatMap((one) => watcher.see(example_state(one), 'si')).map((one) => one.text);
  };

  it('slack is told once, with its depth when it is over', () => {
    expect(texts([{ time: 1 }, { time: 2, slack: 0.004 }, { time: 2.1, slack: 0.013 }, { time: 2.2 }, { time: 2.3, slack: 0.002 }, { time: 2.4 }, { time: 3.5 }]))
      .toEqual(['slack: the web hangs loose, 4.00 mm', 'taut again; slack was up to 13.0 mm']);
  });

  it('slack between two looks is told by the lowest tension', () => {
    expect(texts([{ time: 1 }, { time: 3, lowest_tension: 0 }])).toEqual(['slack for a moment: the tension fell to nothing']);
  });

  it('holding, parting, the core and a fault are told', () => {
    expect(texts([{ time: 1 }, { time: 2, held: true }, { time: 3, held: true, broken: true }, { time: 4, held: true, broken: true, at_core: true, failed: true, fault: 'steps too small' }]))
      .toEqual(['the brake holds the roll', 'the web has parted', 'no web is left: the run is over', 'the run was broken off: steps too small']);
  });

  it('states have a word each', () => {
    const words = (changed: Record<string, unknown>) => state_words(example_state(changed)).map((one) => one.word);
    expect(words({})).toEqual(['running']);
    expect(words({ slack: 0.01, tension: 0 })).toEqual(['slack', 'running']);
    expect(words({ tension: 120 })).toEqual(['running', 'tension above its window']);
    expect(words({ held: true, tension: 60 })).toEqual(['roll held by the brake', 'tension below its window']);
    expect(words({ broken: true, rim_speed: 0 })).toEqual(['web broken']);
    expect(words({ failed: true, fault: 'x' })).toEqual(['failed: x']);
  });

  it('time reads as a clock', () => {
    expect([0, 9.94, 61, 3671].map(clock_text)).toEqual(['0:00.0', '0:09.9', '1:01.0', '1:01:11']);
  });
});
