// The real core in Node: what the worker sends is what the page shows.
import createHoldback from '@core/holdback.js';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { bytesOf, calls, compile, type CoreModule } from '../src/core/module';
import { slim } from '../src/core/slim';
import { kinds, noteText } from '../src/units';

const text = readFileSync('../examples/02-film-laminator.toml', 'utf8');
const wasmBinary = readFileSync(resolve(process.env['HOLDBACK_WASM'] ?? '../build/wasm/apps/wasm', 'holdback.wasm'));
let core: CoreModule;
const answer = (more: Record<string, unknown>): any => JSON.parse(calls.answer(core, JSON.stringify({ version: 1, stand: { name: 'x.toml', text }, ...more })));
beforeAll(async () => {
  core = await createHoldback({ wasmBinary });
});

describe('the core as the page holds it', () => {
  it('is base64 (RFC 4648, section 10)', () => {
    expect(['', 'Zg==', 'Zm8=', 'Zm9v', 'Zm9vYmFy'].map((text) => Buffer.from(bytesOf(text)).toString())).toEqual(['', 'f', 'fo', 'foo', 'foobar']);
  });
  it('compiles while its parts come, and not when they are none', async () => {
    const packed = gzipSync(wasmBinary);
    const parts = [packed.subarray(0, 300_000), packed.subarray(300_000)];
    const module = await compile(new ReadableStream({ pull: (to) => (parts.length > 0 ? to.enqueue(new Uint8Array(parts.shift()!)) : to.close()) }));
    expect(WebAssembly.Module.exports(module).map((one) => one.kind)).toContain('memory');
    await expect(compile(new Blob(['no core']).stream())).rejects.toThrow();
  });
});

describe('the core', () => {
  it('chooses a fit, and the short form changes no number', () => {
    const whole = answer({ command: 'size', all: true });
    const short = slim(structuredClone(whole));
    expect(short.choice.recommended).toEqual(whole.choice.recommended);
    whole.choice.all.forEach((fit: any, i: number) => fit.jobs.forEach((job: any, j: number) => {
      const { margin, binding, state, pairs } = short.choice.all[i].jobs[j];
      expect({ margin, binding, state, pairs }).toEqual({ margin: job.margin, binding: job.binding, state: job.state, pairs: job.pairs });
    }));
    expect(JSON.stringify(short).length).toBeLessThan(JSON.stringify(whole).length / 2);
  });
  it('chooses in brief as it does whole, and in depth for the one job that is looked at', () => {
    const whole = answer({ command: 'size', all: true, job: 'PET 23 fast' }).choice;
    const brief = slim(answer({ command: 'size', all: true, brief: true, job: 'PET 23 fast' })).choice;
    expect(brief.brief).toBe(true);
    expect(brief.recommended.fit).toEqual(whole.recommended.fit);
    whole.all.forEach((fit: any, i: number) => {
      expect(brief.all[i].fit).toEqual(fit.fit);
      fit.jobs.forEach(({ margin, binding, state, pairs }: any, j: number) => {
        expect(brief.all[i].standings[j]).toMatchObject({ binding, state, pairs });
        expect(brief.all[i].standings[j].margin / margin).toBeCloseTo(1, 12); // the last digit may differ
      });
    });
    const deep = (choice: any) => choice.recommended.jobs.find((one: any) => one.job === 'PET 23 fast');
    expect(deep(brief).limits).toEqual(deep(whole).limits);
    expect(brief.recommended.jobs.filter((one: any) => one.limits.length > 0)).toHaveLength(1);
    expect(brief.uncovered.map((one: any) => one.job)).toEqual(whole.uncovered.map((one: any) => one.job));
  });
  it('names fields as the forms do', () => {
    const bad = answer({ command: 'check', stand: { name: 'x.toml', text: text.replace('full_diameter = "1000 mm"', 'full_diameter = "1000"') } });
    expect(bad.outcome).toBe('bad_input');
    expect(bad.problems.map((one: any) => one.field)).toContain('roll[0].full_diameter');
  });
  it('says nothing whose amounts the page would miss in US units', () => {
    const choice = answer({ command: 'size', all: true }).choice;
    const notes = [...choice.assumptions, ...choice.cautions, choice.why, ...choice.uncovered.flatMap((one: any) => [one.why, ...one.remedies.map((r: any) => r.what)])];
    const metric = new RegExp(`\\d (${Object.values(kinds).filter((kind) => kind.si.unit !== kind.us.unit && /^[a-zµ·/]+$/i.test(kind.si.unit) && kind.si.unit !== 'm').map((kind) => kind.si.unit.replace('/', '\\/')).join('|')})\\b`);
    for (const note of notes) expect(noteText(note, 'us')).not.toMatch(metric);
  });
  it('runs live', () => {
    const film = readFileSync('../examples/04-film-in-motion.toml', 'utf8');
    const opened = JSON.parse(calls.liveOpen(core, JSON.stringify({ version: 1, stand: { name: 'f.toml', text: film }, job: 'clear film' })));
    expect(opened.state.held).toBe(true);
    const on = JSON.parse(calls.liveAdvance(core, JSON.stringify({ run: opened.run, for: 1, inputs: { line_speed: 1 } })));
    expect(on.state.time).toBeGreaterThan(0.9);
    calls.liveClose(core, String(opened.run));
    expect(JSON.parse(calls.liveAdvance(core, JSON.stringify({ run: opened.run, for: 1 })))).toHaveProperty('problem');
  });
});
