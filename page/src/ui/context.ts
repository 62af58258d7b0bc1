// The app within reach of every component.
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Core } from '../contract';
import type { App, State } from '../store/app';
import { useStore } from '../store/signal';

export const AppContext = createContext<{ app: App; core: Core } | null>(null);

export function useApp(): App {
  const context = useContext(AppContext);
  if (!context) throw new Error('no app around this component');
  return context.app;
}
export function useCore(): Core {
  const context = useContext(AppContext);
  if (!context) throw new Error('no app around this component');
  return context.core;
}
export const useApped = <P,>(pick: (state: State) => P): P => useStore(useApp().store, pick);
