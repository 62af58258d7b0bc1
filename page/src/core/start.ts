// The first worker begins before anything else of the page: it unpacks the core while the page is drawn.
import type { WorkerLike } from './client';
import CoreWorker from './worker?worker&inline';

function start(): WorkerLike {
  if (typeof WebAssembly === 'undefined' || typeof DecompressionStream === 'undefined') return unableWorker();
  return new CoreWorker() as unknown as WorkerLike;
}

/** Stands in where the browser lacks what the core needs: it says so and answers nothing. */
function unableWorker(): WorkerLike {
  const worker: WorkerLike = { postMessage: () => undefined, terminate: () => undefined, onmessage: null, onerror: null };
  setTimeout(() => worker.onmessage?.({ data: { kind: 'unable', what: 'WebAssembly or DecompressionStream is missing' } }));
  return worker;
}

let first: WorkerLike | null = start();
const begun = new Promise<void>((done) => {
  if (first instanceof EventTarget) first.addEventListener('message', () => done(), { once: true });
  setTimeout(done, 300); // [ms] whatever keeps it: the page is drawn
});

/** A worker with the core; the first call takes the one that has begun already. */
export function startWorker(): WorkerLike {
  const worker = first ?? start();
  first = null;
  return worker;
}

/** When the first worker runs: until then drawing the page would keep it from beginning. */
export const firstBegun: Promise<void> = begun;
