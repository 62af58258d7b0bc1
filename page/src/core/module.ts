// The core as four functions over texts. Its memory holds a request and an answer only while a call lasts.

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

export const calls = {
  answer: (core: CoreModule, text: string) => call(core, core._holdback_answer, text),
  liveOpen: (core: CoreModule, text: string) => call(core, core._holdback_live_open, text),
  liveAdvance: (core: CoreModule, text: string) => call(core, core._holdback_live_advance, text),
  liveClose: (core: CoreModule, text: string) => {
    core._holdback_live_close?.(Number(text));
    return 'null';
  },
} as const;

export type CallName = keyof typeof calls;

/** Bytes of a gzipped base64 text. */
export async function unpack(packed: string): Promise<ArrayBuffer> {
  const text = atob(packed);
  const bytes = new Uint8Array(text.length); // filled by hand: Uint8Array.from() takes ten times as long
  for (let i = 0; i < text.length; ++i) bytes[i] = text.charCodeAt(i);
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).arrayBuffer();
}
