// The core as functions over texts. Its memory holds a request and an answer only while a call lasts.

/** What apps/wasm exports. */
export interface CoreModule {
  _malloc(size: number): number;
  _free(at: number): void;
  _holdback_answer(request: number): number;
  _holdback_live_open?(request: number): number;
  _holdback_live_advance?(request: number): number;
  _holdback_live_close?(run: number): void;
  UTF8ToString(at: number): string;
  stringToUTF8(text: string, at: number, size: number): void;
  lengthBytesUTF8(text: string): number;
}

/** One call: text in, text out. Throws when the core has no memory left. */
function call(core: CoreModule, run: ((at: number) => number) | undefined, text: string): string {
  if (!run) throw new Error('This build of the core has no live runs.');
  const size = core.lengthBytesUTF8(text) + 1;
  const sent = core._malloc(size);
  if (sent === 0) throw new Error('The core has no memory left for a request of this size.');
  core.stringToUTF8(text, sent, size);
  const got = run(sent);
  core._free(sent);
  if (got === 0) throw new Error('The core has no memory left for its answer.');
  const out = core.UTF8ToString(got);
  core._free(got);
  return out;
}

interface Leap {
  runs: number[];
  step: number; // [s] of each advance
  within: number; // [ms] of computing; at least one step is made
  inputs: Record<string, unknown>; // with the first step
}

/** Many advances of some runs in step, one after another: [[of run 1, of run 2], …]. Ends early when nothing runs on. */
function leap(core: CoreModule, text: string): string {
  const { runs, step, within, inputs } = JSON.parse(text) as Leap;
  const until = performance.now() + within;
  const steps: string[] = [];
  let [left, first] = [runs, true];
  do {
    const states = runs.map((run) => (left.includes(run)
      ? call(core, core._holdback_live_advance, JSON.stringify({ run, for: step, inputs: first ? inputs : {} })) : 'null'));
    steps.push(`[${states.join()}]`);
    left = left.filter((run) => !/"at_core":true|"failed":true|^\{"problem":/.test(states[runs.indexOf(run)]!));
    first = false;
  } while (left.length > 0 && performance.now() < until);
  return `[${steps.join()}]`;
}

export const calls = {
  answer: (core: CoreModule, text: string) => call(core, core._holdback_answer, text),
  liveOpen: (core: CoreModule, text: string) => call(core, core._holdback_live_open, text),
  liveAdvance: (core: CoreModule, text: string) => call(core, core._holdback_live_advance, text),
  liveLeap: leap,
  liveClose: (core: CoreModule, text: string) => {
    core._holdback_live_close?.(Number(text));
    return 'null';
  },
} as const;

export type CallName = keyof typeof calls;

export function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  const ready = (Uint8Array as unknown as { fromBase64?(text: string): Uint8Array<ArrayBuffer> }).fromBase64;
  if (ready) return ready.call(Uint8Array, base64);
  const text = atob(base64);
  const bytes = new Uint8Array(text.length); // filled by hand: Uint8Array.from() takes ten times as long
  for (let i = 0; i < text.length; ++i) bytes[i] = text.charCodeAt(i);
  return bytes;
}

/** The core from its gzipped bytes. A browser reads it through while they still come. */
export function compile(packed: ReadableStream<Uint8Array<ArrayBuffer>>): Promise<WebAssembly.Module> {
  const bytes = packed.pipeThrough(new DecompressionStream('gzip'));
  return WebAssembly.compileStreaming(new Response(bytes, { headers: { 'Content-Type': 'application/wasm' } }));
}
