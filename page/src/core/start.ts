// Workers with the core. The first one has begun before this is read; see corePieces() in vite.config.ts.
import type { WorkerLike } from './client';
import type { FromWorker, Given } from './wire';

type Early = Worker & { early?: (FromWorker | null)[]; begun?: Promise<void> }; // null: it died

let first: Early | null = typeof window === 'undefined' ? null : ((window as { earlyWorker?: Early }).earlyWorker ?? null);
let source = '';
let compiled: WebAssembly.Module | null = null; // by the first worker that had it; the others need not begin anew

const patience = 400; // [ms] whatever keeps the worker: the page is drawn
/**
 * When the first worker runs and has the core. A browser begins a worker, and hands on what it was sent before, only while
 * the page does nothing: drawing waits for it.
 */
export const firstBegun: Promise<unknown> = first?.begun ? Promise.race([first.begun, new Promise((done) => setTimeout(done, patience))]) : Promise.resolve();

if (first) learn(first);

function learn(worker: Worker): void {
  worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
    if (data.kind === 'ready') compiled = data.module;
  });
}

function start(): WorkerLike {
  if (typeof WebAssembly === 'undefined' || typeof DecompressionStream === 'undefined') return unableWorker();
  source ||= URL.createObjectURL(new Blob([document.getElementById('core-worker')?.textContent ?? '']));
  const worker = new Worker(source);
  learn(worker);
  const give = (message: Given) => worker.postMessage(message);
  if (compiled) give({ module: compiled });
  else {
    for (const one of document.querySelectorAll('.core-part')) give({ part: one.textContent });
    give({ part: '' });
  }
  return worker as unknown as WorkerLike;
}

/** Stands in where the browser lacks what the core needs: it says so and answers nothing. */
function unableWorker(): WorkerLike {
  const worker: WorkerLike = { postMessage: () => undefined, terminate: () => undefined, onmessage: null, onerror: null };
  setTimeout(() => worker.onmessage?.({ data: { kind: 'unable', what: 'WebAssembly or DecompressionStream is missing' } }));
  return worker;
}

/** A worker with the core; the first call takes the one that has begun already, with what it has said meanwhile. */
export function startWorker(): WorkerLike {
  const early = first;
  first = null;
  if (!early) return start();
  const worker = early as unknown as WorkerLike;
  const said = early.early ?? [];
  setTimeout(() => said.forEach((data) => (data ? worker.onmessage?.({ data }) : worker.onerror?.(null))));
  return worker;
}
