// A value that components watch. Small enough to read; nothing else is needed of a state library here.
import { useEffect, useReducer, useRef } from 'preact/hooks';

export class Store<T> {
  private readonly watchers = new Set<() => void>();
  constructor(private value: T) {}

  get(): T {
    return this.value;
  }
  set(part: Partial<T>): void {
    this.value = { ...this.value, ...part };
    for (const watcher of [...this.watchers]) watcher();
  }
  watch(watcher: () => void): () => void {
    this.watchers.add(watcher);
    return () => this.watchers.delete(watcher);
  }
}

/** What `pick` takes of the store; draws again when that changes. */
export function useStore<T, P>(store: Store<T>, pick: (value: T) => P): P {
  const [, draw] = useReducer((n: number) => n + 1, 0);
  const shown = useRef<P | undefined>(undefined);
  const picked = pick(store.get());
  shown.current = picked;
  useEffect(() => {
    const look = () => pick(store.get()) !== shown.current && draw(undefined as never);
    look(); // for what changed between drawing and watching
    return store.watch(look);
  }, [store]);
  return picked;
}
