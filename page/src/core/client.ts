// The page's side of the worker: one request at a time, only the newest of a kind, a new worker when one dies.
import type { Core } from '../contract';
import type { CallName } from './module';
import type { Ask, FromWorker } from './wire';

/** What the client needs of a Worker; tests give it one of their own. */
export interface WorkerLike {
  postMessage(message: Ask): void;
  terminate(): void;
  onmessage: ((event: { data: FromWorker }) => void) | null;
  onerror: ((event: unknown) => void) | null;
  onmessageerror?: ((event: unknown) => void) | null;
}

/** A newer request of the same kind took its place. */
export class Superseded extends Error {}
/** The core stopped twice over the same request, or cannot run here at all. */
export class CoreStopped extends Error {}

interface Job {
  id: number;
  call: CallName;
  text: string;
  slimmed: boolean;
  key: string; // of requests with the same key only the newest is answered; empty: each is
  tries: number;
  sent: number;
  done(answer: unknown): void;
  fail(error: Error): void;
}

export interface ClientOptions {
  start(): WorkerLike;
  /** Something a person should know. */
  tell?(what: 'restarted' | 'unable', detail: string): void;
  /** [ms] after which a request that a newer one has replaced is not waited for. */
  patience?: number;
  now?(): number;
}

export class CoreClient {
  private worker: WorkerLike | null = null;
  private waiting: Job[] = [];
  private running: Job | null = null;
  private last = 0;
  private unable = '';
  /** [ms] that the core took for the last answer. */
  took = 0;

  constructor(private readonly options: ClientOptions) {}

  /** Starts the worker ahead of the first request. */
  warm(): void {
    if (!this.worker && !this.unable) this.worker = this.begin();
  }

  ask(call: CallName, request: unknown, how: { key?: string; slimmed?: boolean } = {}): Promise<unknown> {
    if (this.unable) return Promise.reject(new CoreStopped(this.unable));
    return new Promise((done, fail) => {
      const key = how.key ?? '';
      const text = typeof request === 'string' ? request : JSON.stringify(request);
      this.dropOlder(key);
      this.waiting.push({ id: ++this.last, call, text, slimmed: how.slimmed ?? false, key, tries: 0, sent: 0, done, fail });
      this.next();
    });
  }

  private dropOlder(key: string): void {
    if (key === '') return;
    for (const job of this.waiting.filter((one) => one.key === key)) job.fail(new Superseded());
    this.waiting = this.waiting.filter((one) => one.key !== key);
    const patience = this.options.patience ?? 3000;
    if (this.running?.key === key && this.now() - this.running.sent > patience) {
      this.running.fail(new Superseded());
      this.replace();
    }
  }

  private now(): number {
    return this.options.now?.() ?? performance.now();
  }

  private begin(): WorkerLike {
    const worker = this.options.start();
    worker.onmessage = ({ data }) => worker === this.worker && this.hear(data);
    // Chromium gives no message with some of these errors: any of them is the end of this worker.
    const died = (event: unknown) => worker === this.worker && this.died(String((event as ErrorEvent)?.message ?? ''));
    worker.onerror = died;
    worker.onmessageerror = died;
    return worker;
  }

  private next(): void {
    if (this.running || this.waiting.length === 0 || this.unable) return;
    this.warm();
    const job = this.waiting.shift();
    if (!job || !this.worker) return;
    this.running = job;
    job.tries += 1;
    job.sent = this.now();
    this.worker.postMessage({ id: job.id, call: job.call, text: job.text, slimmed: job.slimmed });
  }

  private hear(message: FromWorker): void {
    if (message.kind === 'begun' || message.kind === 'ready') return;
    if (message.kind === 'unable') return this.giveUp(message.what);
    if (message.id !== this.running?.id) return;
    if (message.kind === 'died') return this.died(message.what);
    const job = this.running;
    this.running = null;
    this.took = message.took;
    job.done(message.answer);
    this.next();
  }

  /** The request is tried once more in a new worker; a second death is the request's fault. */
  private died(what: string): void {
    const job = this.running;
    this.options.tell?.('restarted', what);
    this.replace();
    if (!job) return;
    // What a dead worker held of live runs is gone: only an answer can be asked for again.
    if (job.tries < 2 && job.call === 'answer') this.waiting.unshift(job);
    else job.fail(new CoreStopped(what));
    this.next();
  }

  private replace(): void {
    this.worker?.terminate();
    this.running = null;
    this.worker = this.begin();
  }

  private giveUp(what: string): void {
    this.unable = what || 'The core cannot run in this browser.';
    this.options.tell?.('unable', this.unable);
    const left = [this.running, ...this.waiting];
    this.running = null;
    this.waiting = [];
    for (const job of left) job?.fail(new CoreStopped(this.unable));
  }
}

/** Answers and live runs each in a worker of their own, so that a long answer never halts a moving drawing. */
export function coreOf(answers: CoreClient, live: CoreClient): Core {
  return {
    answer: (request) => answers.ask('answer', { version: 1, ...request }),
    liveOpen: (request) => live.ask('liveOpen', { version: 1, ...request }),
    liveAdvance: (run, seconds, inputs) => live.ask('liveAdvance', { run, for: seconds, inputs }),
    liveLeap: (runs, step, within, inputs) => live.ask('liveLeap', { runs, step, within, inputs }) as Promise<any[][]>,
    liveClose: async (run) => void (await live.ask('liveClose', String(run))),
  };
}
