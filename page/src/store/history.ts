// Undo and redo over whole texts: what is undone is exactly what was there, comments and all.

export interface History {
  past: string[];
  now: string;
  future: string[];
  mark: string; // of the last edit; edits with the same mark are one step
}

const most = 20_000_000; // characters kept in all: the oldest go first

export const begin = (text: string): History => ({ past: [], now: text, future: [], mark: '' });

/** An edit. Typing on in one field is one step: such edits carry the same mark. An empty mark is always a step. */
export function push(history: History, text: string, mark = ''): History {
  if (text === history.now) return history;
  const same = mark !== '' && mark === history.mark && history.past.length > 0;
  const past = same ? history.past : [...history.past, history.now];
  return { past: trimmed(past), now: text, future: [], mark };
}

function trimmed(past: string[]): string[] {
  let size = past.reduce((sum, text) => sum + text.length, 0);
  let from = 0;
  while (size > most && from < past.length - 1) size -= past[from++]!.length;
  return from === 0 ? past : past.slice(from);
}

export function undo(history: History): History {
  const before = history.past[history.past.length - 1];
  if (before === undefined) return history;
  return { past: history.past.slice(0, -1), now: before, future: [history.now, ...history.future], mark: '' };
}

export function redo(history: History): History {
  const after = history.future[0];
  if (after === undefined) return history;
  return { past: [...history.past, history.now], now: after, future: history.future.slice(1), mark: '' };
}
