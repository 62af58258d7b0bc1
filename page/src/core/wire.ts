// What page and worker say to each other.
import type { CallName } from './module';

export interface Ask {
  id: number;
  call: CallName;
  text: string;
  slimmed: boolean; // leave out what the matrix does not show
}

/** What a worker is given once, before its answers come: the core, in parts as the page holds it, or compiled already. */
export type Given =
  | { part: string } // base64 of the gzipped core; empty: that was all
  | { module: WebAssembly.Module };

export type ToWorker = Ask | Given;

export type FromWorker =
  | { kind: 'begun' } // the worker runs and has its core, which is still being compiled
  | { kind: 'ready'; module: WebAssembly.Module } // for the next worker
  | { kind: 'unable'; what: string }
  | { kind: 'answer'; id: number; answer: unknown; took: number }
  | { kind: 'died'; id: number; what: string };
