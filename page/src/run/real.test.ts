/** The loop on the real core, where it has been built for WebAssembly. */
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Core } from '../contract';
import { calls, type CoreModule } from '../core/module';
import { RunLoop } from './loop';

const built = resolve(process.env['HOLDBACK_WASM'] ?? resolve(import.meta.dirname, '../../../build/wasm/apps/wasm'));
const stand = { name: 'stand', text: readFileSync(resolve(import.meta.dirname, '../../../examples/04-film-in-motion.toml'), 'utf8') };

async function real_core(): Promise<Core> {
  const create = (await import(/* @vite-ignore */ resolve(built, 'holdback.js'))).default as (o: { wasmBinary: Buffer }) => Promise<CoreModule>;
  const core = await create({ wasmBinary: readFileSync(resolve(built, 'holdback.wasm')) });
  const ask = (call: keyof typeof calls, text: string) => Promise.resolve(JSON.parse(calls[call](core, text)));
  return {
    answer: (request) => ask('answer', JSON.stringify(request)),
    liveOpen: (request) => ask('liveOpen', JSON.stringify(request)),
    liveAdvance: (run, seconds, inputs) => ask('liveAdvance', JSON.stringify({ run, for: seconds, inputs })),
    liveLeap: (runs, step, within, inputs) => ask('liveLeap', JSON.stringify({ runs, step, within, inputs })),
    liveClose: (run) => ask('liveClose', String(run)),
  };
}

describe.skipIf(!existsSync(resolve(built, 'holdback.wasm')))('the loop on the core', () => {
  it('runs a whole roll down to its core with the web under tension', async () => {
    const loop = new RunLoop(await real_core(), () => undefined, (what) => { throw new Error(what); });
    await loop.open(stand, 'clear film', ['load cell', 'hand']);
    loop.send({ line_speed: 3 });
    await loop.whole(5, () => Promise.resolve(true));
    for (const track of loop.tracks) {
      expect(track.state).toMatchObject({ at_core: true, failed: false });
      expect(track.state.diameter).toBeCloseTo(0.168, 3);
      // Length of web from the areas: π (0.64² − 0.168²)/4 over 30 µm.
      expect(track.state.web_run).toBeGreaterThan(0.999 * (Math.PI * (0.64 ** 2 - 0.168 ** 2)) / 4 / 30e-6);
      expect(track.state.web_run).toBeLessThan(1.001 * (Math.PI * (0.64 ** 2 - 0.168 ** 2)) / 4 / 30e-6 + 20);
      expect(track.strips.end).toBeCloseTo(track.state.time, 6);
    }
  }, 60_000);

  it('does what a hand does, and says in words what the core refuses', async () => {
    const faults: string[] = [];
    const loop = new RunLoop(await real_core(), () => undefined, (what) => faults.push(what));
    await loop.open(stand, 'clear film', ['hand']);
    loop.send({ pairs: 1, pressure: 2e5 });
    await loop.advance(2);
    expect(loop.tracks[0]!.state).toMatchObject({ pairs: 1, set_pressure: 2e5 });
    loop.send({ break_web: true });
    await loop.advance(1);
    expect(loop.tracks[0]!.state).toMatchObject({ broken: true, tension: 0 });
    loop.send({ pressure: -1 });
    await loop.advance(0);
    expect(faults).toEqual(['pressure: Pa, from 0']);
    const opened = await loop.open(stand, 'no such job', ['hand']);
    expect(opened.refused.problems[0].what.text).toBe('the stand has no such job');
  });
});
