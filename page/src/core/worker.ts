// Runs the core away from the screen. One message in, one out, in order; what throws is told, never swallowed.
import createHoldback from '@core/holdback.js';
import packed from 'virtual:core-wasm';
import { calls, unpack, type CoreModule } from './module';
import { slim } from './slim';
import type { FromWorker, ToWorker } from './wire';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const say = (message: FromWorker) => scope.postMessage(message);

say({ kind: 'begun' });
const core: Promise<CoreModule> = unpack(packed).then((wasmBinary) => createHoldback({ wasmBinary }));
core.then(
  () => say({ kind: 'ready' }),
  (error: unknown) => say({ kind: 'unable', what: String(error) }),
);

scope.onmessage = async (event: MessageEvent<ToWorker>) => {
  const { id, call, text, slimmed } = event.data;
  const module = await core.catch(() => null);
  if (!module) return; // 'unable' has been said
  try {
    const begin = performance.now();
    const answer: unknown = JSON.parse(calls[call](module, text));
    say({ kind: 'answer', id, answer: slimmed ? slim(answer) : answer, took: performance.now() - begin });
  } catch (error) {
    // A trap leaves the core's memory in doubt: the other side starts a new worker.
    say({ kind: 'died', id, what: String(error) });
  }
};
