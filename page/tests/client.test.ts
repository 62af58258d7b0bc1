// The client against workers that behave, that die and that cannot start.
import { describe, expect, it } from 'vitest';
import { CoreClient, CoreStopped, Superseded, type WorkerLike } from '../src/core/client';
import type { Ask, FromWorker } from '../src/core/wire';

class FakeWorker implements WorkerLike {
  onmessage: ((event: { data: FromWorker }) => void) | null = null;
  onerror: ((event: unknown) => void) | null = null;
  sent: Ask[] = [];
  ended = false;
  postMessage(message: Ask): void { this.sent.push(message); }
  terminate(): void { this.ended = true; }
  say(data: FromWorker): void { this.onmessage?.({ data }); }
  answer(answer: unknown = 'answer'): void { this.say({ kind: 'answer', id: this.sent[this.sent.length - 1]!.id, answer, took: 1 }); }
}

function setUp(patience?: number, now?: () => number) {
  const workers: FakeWorker[] = [];
  const told: string[] = [];
  const client = new CoreClient({
    start: () => workers[workers.push(new FakeWorker()) - 1]!,
    tell: (what) => told.push(what),
    ...(patience === undefined ? {} : { patience }),
    ...(now ? { now } : {}),
  });
  return { workers, told, client };
}

describe('CoreClient', () => {
  it('answers requests one at a time, in order', async () => {
    const { workers, client } = setUp();
    const first = client.ask('answer', { a: 1 });
    const second = client.ask('answer', { a: 2 });
    expect(workers[0]!.sent).toHaveLength(1);
    workers[0]!.answer('one');
    workers[0]!.answer('two');
    expect([await first, await second]).toEqual(['one', 'two']);
  });
  it('answers only the newest request of a kind', async () => {
    const { workers, client } = setUp();
    const running = client.ask('answer', { n: 1 }, { key: 'size' });
    const dropped = client.ask('answer', { n: 2 }, { key: 'size' });
    const newest = client.ask('answer', { n: 3 }, { key: 'size' });
    await expect(dropped).rejects.toBeInstanceOf(Superseded);
    workers[0]!.answer('first');
    workers[0]!.answer('third');
    expect([await running, await newest]).toEqual(['first', 'third']);
    expect(workers[0]!.sent.map((one) => JSON.parse(one.text).n)).toEqual([1, 3]);
  });
  it('does not wait for a long request that a newer one has replaced', async () => {
    let time = 0;
    const { workers, client } = setUp(1000, () => time);
    const long = client.ask('answer', { n: 1 }, { key: 'size' });
    time = 2000;
    const newest = client.ask('answer', { n: 2 }, { key: 'size' });
    await expect(long).rejects.toBeInstanceOf(Superseded);
    expect(workers[0]!.ended).toBe(true);
    workers[1]!.answer('new');
    expect(await newest).toBe('new');
  });
  it('starts a new worker when one dies, says so, and asks again once', async () => {
    const { workers, told, client } = setUp();
    const answer = client.ask('answer', {});
    workers[0]!.onerror?.({}); // an error event without a message
    expect(workers[0]!.ended).toBe(true);
    expect(told).toEqual(['restarted']);
    workers[1]!.answer('after all');
    expect(await answer).toBe('after all');
  });
  it('gives up a request that kills two workers, and goes on with the next', async () => {
    const { workers, client } = setUp();
    const deadly = client.ask('answer', {});
    const next = client.ask('answer', {});
    workers[0]!.say({ kind: 'died', id: 1, what: 'unreachable' });
    workers[1]!.say({ kind: 'died', id: 1, what: 'unreachable' });
    await expect(deadly).rejects.toBeInstanceOf(CoreStopped);
    workers[2]!.answer('fine');
    expect(await next).toBe('fine');
  });
  it('says that the core cannot run here, and fails at once from then on', async () => {
    const { workers, told, client } = setUp();
    const answer = client.ask('answer', {});
    workers[0]!.say({ kind: 'unable', what: 'no WebAssembly' });
    await expect(answer).rejects.toBeInstanceOf(CoreStopped);
    await expect(client.ask('answer', {})).rejects.toBeInstanceOf(CoreStopped);
    expect(told).toEqual(['unable']);
  });
});
