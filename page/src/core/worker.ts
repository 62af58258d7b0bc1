// Runs the core away from the screen. One message in, one out, in order; what throws is told, never swallowed.
import createHoldback from '@core/holdback.js';
import { bytesOf, calls, compile, type CoreModule } from './module';
import { slim } from './slim';
import type { FromWorker, ToWorker } from './wire';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const say = (message: FromWorker) => scope.postMessage(message);

let take: (module: WebAssembly.Module | Promise<WebAssembly.Module>) => void;
const compiled = new Promise<WebAssembly.Module>((done) => (take = done));
const core: Promise<CoreModule> = compiled.then((module) => new Promise((done, fail) => {
  const instantiateWasm = (imports: WebAssembly.Imports, got: (instance: WebAssembly.Instance) => void) => {
    WebAssembly.instantiate(module, imports).then(got, fail);
    return {};
  };
  createHoldback({ instantiateWasm }).then(done, fail);
}));
core.then(
  async () => say({ kind: 'ready', module: await compiled }),
  (error: unknown) => say({ kind: 'unable', what: String(error) }),
);

// The core is unpacked and compiled as its parts come.
let feed: ReadableStreamDefaultController<Uint8Array<ArrayBuffer>>;
const packed = new ReadableStream<Uint8Array<ArrayBuffer>>({ start: (controller) => void (feed = controller) });
let fed = false;
function given(part: string): void {
  if (!fed) take(compile(packed));
  fed = true;
  if (part === '') say({ kind: 'begun' });
  try {
    if (part === '') feed.close();
    else feed.enqueue(bytesOf(part));
  } catch {
    // What was fed is no core, which has been said.
  }
}

scope.onmessage = async ({ data }: MessageEvent<ToWorker>) => {
  if ('part' in data) return given(data.part);
  if ('module' in data) return take(data.module);
  const { id, call, text, slimmed } = data;
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
