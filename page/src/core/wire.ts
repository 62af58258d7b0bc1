// What page and worker say to each other.
import type { CallName } from './module';

export interface ToWorker {
  id: number;
  call: CallName;
  text: string;
  slimmed: boolean; // leave out what the matrix does not show
}

export type FromWorker =
  | { kind: 'begun' } // the worker runs; its core is still being unpacked
  | { kind: 'ready' }
  | { kind: 'unable'; what: string }
  | { kind: 'answer'; id: number; answer: unknown; took: number }
  | { kind: 'died'; id: number; what: string };
