import { describe, expect, it } from 'vitest';
import { begin, push, redo, undo } from '../src/store/history';
import { keep, recall, type Kept } from '../src/store/keep';

describe('history', () => {
  it('gives back exactly what was there, and forward again', () => {
    const history = push(push(begin('a'), 'b'), 'c');
    expect(undo(history).now).toBe('b');
    expect(undo(undo(history)).now).toBe('a');
    expect(undo(undo(undo(history))).now).toBe('a');
    expect(redo(undo(history)).now).toBe('c');
  });
  it('makes one step of typing in one field', () => {
    const history = push(push(push(begin('a'), 'ab', 'x'), 'abc', 'x'), 'abcd', 'y');
    expect(undo(history).now).toBe('abc');
    expect(undo(undo(history)).now).toBe('a');
  });
  it('drops the oldest when there is too much', () => {
    let history = begin('0');
    for (let i = 0; i < 9; ++i) history = push(history, String(i).repeat(6_000_000));
    expect(history.past.length).toBeLessThan(5);
  });
});

const kept: Kept = { text: 'x = 1\n', name: 'f.toml', units: 'us', theme: 'dark', area: 'choose', job: 'j', hintSeen: true, unsaved: true };
const memory = (): Storage => {
  const map = new Map<string, string>();
  return { getItem: (key: string) => map.get(key) ?? null, setItem: (key: string, value: string) => void map.set(key, value) } as unknown as Storage;
};

describe('keep', () => {
  it('keeps and recalls the last state', () => {
    const storage = memory();
    expect(keep(kept, () => storage)).toBeNull();
    expect(recall(() => storage)).toEqual(kept);
  });
  it('tells storage that is refused from storage that is full', () => {
    expect(keep(kept, () => { throw new DOMException('no', 'SecurityError'); })).toBe('refused');
    expect(keep(kept, () => ({ setItem: () => { throw new DOMException('exceeded the quota', 'QuotaExceededError'); } }) as unknown as Storage)).toBe('full');
    expect(keep({ ...kept, text: 'x'.repeat(4_000_001) }, memory)).toBe('large');
  });
  it('takes nothing that is not its own', () => {
    const storage = memory();
    expect(recall(() => storage)).toBeNull();
    storage.setItem('holdback.page.1', '{"text":');
    expect(recall(() => storage)).toBeNull();
    storage.setItem('holdback.page.1', '[1]');
    expect(recall(() => storage)).toBeNull();
    expect(recall(() => { throw new Error('refused'); })).toBeNull();
  });
});
