// @vitest-environment happy-dom
// Papers of the core, shown block by block, on a paper written by hand after src/holdback/api/papers_json.cpp.
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CoreClient } from '../src/core/client';
import { Paper, type PaperText } from '../src/papers/Paper';
import { requestOf } from '../src/papers/Papers';
import { App } from '../src/store/app';
import { AppContext } from '../src/ui/context';

const paper: PaperText = {
  kind: 'setup_card', file: 'card-01-x', title: 'Set-up card: <b>x</b>', subject: 'Slitter (invented)', date: '2026-05-03', cover: false, one_page: true, size: 13,
  blocks: [
    { block: 'heading', text: 'Settings', level: 2 },
    { block: 'verdict', state: 'tight', text: 'tight: stop torque +4 %' },
    { block: 'facts', columns: 2, large: true, facts: [{ label: 'tension', value: '75.0 N' }] },
    { block: 'table', caption: 'By hand', row_height: 0, large: false, columns: [{ head: 'from', unit: 'mm', number: true }, { head: 'state', unit: '', number: false }], rows: [[{ text: '600' }, { text: 'fails', state: 'fails' }], [{ text: '90' }]] },
    { block: 'items', numbered: true, items: ['stop the line', 'lock it out'] },
    { block: 'figure', title: 'Pairs', description: 'two of four are engaged', svg: '<svg xmlns="http://www.w3.org/2000/svg"><text>1 &amp; 2</text></svg>', share: 0.5 },
    { block: 'equation', name: 'Torque', id: 'brake_torque', formula: 'M = T r', put_in: 'M = 75 N · 0.3 m', result: 'M = 22.5 N·m', source: '[x]' },
    { block: 'warning', signal: 'WARNING', text: 'Nips pull in.' },
    { block: 'paragraph', text: 'Check by a push.', tone: 'muted' },
    { block: 'page_break' },
  ],
};

describe('a paper', () => {
  let root: HTMLElement;
  beforeEach(() => {
    root = document.createElement('div');
    document.body.append(root);
    const core = { ask: () => new Promise(() => undefined) } as unknown as CoreClient;
    const app = new App(core, core);
    act(() => render(<AppContext.Provider value={{ app, core: null as any }}><Paper paper={paper} /></AppContext.Provider>, root));
  });
  afterEach(() => {
    act(() => render(null, root));
    root.remove();
  });

  it('shows every block, and text as text', () => {
    for (const text of ['Set-up card: <b>x</b>', 'Settings', 'tight: stop torque +4 %', '75.0 N', 'By hand', 'lock it out', 'M = 22.5 N·m', 'WARNING', 'Check by a push.'])
      expect(root.textContent).toContain(text);
    expect(root.querySelector('h2 b')).toBeNull();
  });
  it('gives a cell that is missing its place, and a state its mark', () => {
    const rows = [...root.querySelectorAll('tbody tr')];
    expect(rows.map((one) => one.children.length)).toEqual([2, 2]);
    expect(rows[0]!.querySelector('.mark.fails')).not.toBeNull();
    expect(root.querySelector('th .unit')!.textContent).toBe(' [mm]');
  });
  it('holds figures as pictures that say in words what they show', () => {
    const figure = root.querySelector<HTMLImageElement>('img.paperfigure')!;
    expect(figure.alt).toBe('Pairs. two of four are engaged');
    expect(decodeURIComponent(figure.src.split(',').slice(1).join(','))).toContain('<text>1 &amp; 2</text>');
  });
});

describe('what is asked for a paper', () => {
  const old = { name: 'old.toml', text: 'a' };
  it('names the job where there is one card or one worked job', () => {
    expect(requestOf('cards', 'x', 'us', null, null)).toMatchObject({ command: 'papers', papers: ['cards'], job: 'x', units: 'us' });
    expect(requestOf('maintenance', 'x', 'si', null, null)).not.toHaveProperty('job');
  });
  it('waits for something to compare with', () => {
    expect(requestOf('changes', 'x', 'si', null, null)).toBeNull();
    expect(requestOf('changes', 'x', 'si', old, null)).toMatchObject({ before: old });
    expect(requestOf('comparison', 'x', 'si', old, null)).toBeNull();
    expect(requestOf('comparison', 'x', 'si', null, old)).toMatchObject({ beside: old });
  });
  it('is nothing for the summary, which the page has already', () => expect(requestOf('summary', 'x', 'si', null, null)).toBeNull());
});
