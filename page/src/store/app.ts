// The page's state and what may be done to it. The text of the stand file is the state; all else follows from it.
import { Superseded, type CoreClient } from '../core/client';
import { read, safely, Unpatchable } from '../toml/patch';
import { begin, push, redo, undo, type History } from './history';
import { keep, recall, refusalWords, type Kept } from './keep';
import { Store } from './signal';
import { examples } from './examples';

export const areas = ['describe', 'choose', 'run', 'measure', 'papers'] as const;
export type Area = (typeof areas)[number];

export interface Notice {
  id: number;
  tone: 'note' | 'warning';
  text: string;
}

/** A table of jobs beside the stand file, sent along with every request. */
export interface Sheet {
  name: string;
  text: string;
}

export interface State {
  history: History;
  name: string; // of the file
  saved: string; // text as last opened or saved
  file: any; // parsed; of the last text that parses
  fault: string; // why the text does not parse; else empty
  sheet: Sheet | null;
  units: 'si' | 'us';
  theme: 'light' | 'dark';
  area: Area;
  job: string; // chosen; empty: the one that the core names
  problems: any; // the newest answer of any command: its problems, columns, defaults
  check: any; // facts of the jobs
  size: any; // every fit, jobs of each in short; the chosen job in depth
  plan: any;
  stale: boolean; // answers belong to an older text
  notices: Notice[];
  hintSeen: boolean;
}

const first = examples.find((one) => one.name.startsWith('02')) ?? examples[0]!;

function initial(): State {
  const kept = recall() ?? {};
  const text = kept.text ?? first.text;
  const dark = typeof matchMedia === 'function' && matchMedia('(prefers-color-scheme: dark)').matches;
  return {
    ...parsed(text, {}),
    history: begin(text),
    name: kept.name ?? first.name,
    saved: kept.unsaved ? '' : text,
    sheet: null,
    units: kept.units === 'us' ? 'us' : 'si',
    theme: kept.theme ?? (dark ? 'dark' : 'light'),
    area: areas.find((one) => one === kept.area) ?? 'describe',
    job: kept.job ?? '',
    problems: null,
    check: null,
    size: null,
    plan: null,
    stale: true,
    notices: [],
    hintSeen: kept.hintSeen ?? false,
  };
}

function parsed(text: string, before: any): { file: any; fault: string } {
  const result = read(text);
  return 'fault' in result ? { file: before, fault: result.fault } : { file: result.file, fault: '' };
}

const quiet = 250; // [ms] without an edit
const noteTime = 12_000; // [ms] that a note stays; warnings stay until they are put away
const firstJob = (file: any): string => String(file?.job?.[0]?.name ?? '');

export class App {
  readonly store = new Store<State>(initial());
  private notices = 0;
  private said = '';
  private later: ReturnType<typeof setTimeout> | undefined;
  private keeping: ReturnType<typeof setTimeout> | undefined;

  constructor(readonly core: CoreClient) {}

  get state(): State {
    return this.store.get();
  }

  // --- edits ------------------------------------------------------------------------------------------------------

  /** Makes an edit of the text; says so when it cannot be made. Edits with the same mark are one step of undo. */
  edit(change: (text: string) => string, mark = ''): void {
    try {
      this.to(push(this.state.history, safely(this.state.history.now, change), mark));
    } catch (error) {
      if (!(error instanceof Unpatchable)) throw error;
      this.tell(error.message, 'warning');
    }
  }

  /** The text as a whole, whatever it is: the text editor's edit. */
  write(text: string, mark: string): void {
    this.to(push(this.state.history, text, mark));
  }

  undo(): void {
    this.to(undo(this.state.history));
  }
  redo(): void {
    this.to(redo(this.state.history));
  }

  private to(history: History): void {
    if (history === this.state.history) return;
    this.store.set({ history, ...parsed(history.now, this.state.file), stale: true });
    this.keepSoon();
    this.ask();
  }

  // --- files ------------------------------------------------------------------------------------------------------

  /** A stand file in place of the one at hand, which undo brings back. */
  open(name: string, text: string): void {
    const history = push(this.state.history, text);
    this.store.set({ name, saved: text, sheet: null, job: '', size: null, plan: null, check: null, problems: null });
    if (history === this.state.history) this.ask();
    else this.to(history);
    const { fault } = this.state;
    if (fault) this.tell(`${name} is no stand file as it is: ${fault}. It is shown as text, to be mended there.`, 'warning');
    else this.tell(`${name} is open. Undo brings back what was here before.`);
  }

  addSheet(sheet: Sheet | null): void {
    this.store.set({ sheet, stale: true });
    this.ask();
  }

  markSaved(): void {
    this.store.set({ saved: this.state.history.now });
    this.keepSoon();
  }

  // --- what is looked at ------------------------------------------------------------------------------------------

  show(part: Partial<Pick<State, 'units' | 'theme' | 'area' | 'hintSeen'>>): void {
    this.store.set(part);
    this.keepSoon();
    if (part.area) this.ask();
  }
  choose(job: string): void {
    this.store.set({ job });
    this.keepSoon();
    this.ask();
  }

  tell(text: string, tone: Notice['tone'] = 'note'): void {
    const notices = this.state.notices.filter((one) => one.text !== text);
    const id = ++this.notices;
    this.store.set({ notices: [...notices, { id, tone, text }].slice(-4) });
    if (tone === 'note') setTimeout(() => this.dismiss(id), noteTime);
  }
  dismiss(id: number): void {
    this.store.set({ notices: this.state.notices.filter((one) => one.id !== id) });
  }

  // --- answers ----------------------------------------------------------------------------------------------------

  /** A request over the stand as it is. Units are no part of it: SI/US never changes a result. */
  request(more: Record<string, unknown>): Record<string, unknown> {
    const { history, name, sheet } = this.state;
    return { version: 1, stand: { name, text: history.now }, ...(sheet ? { jobs: sheet } : {}), ...more };
  }

  /**
   * Asks for what the present area shows. The plan of one job comes first: it is the quickest, and brings what is wrong
   * with the file; the whole choice takes longest.
   */
  ask(): void {
    const { area } = this.state;
    const text = this.state.history.now;
    const into = (part: (answer: any) => Partial<State>) => (answer: any) => {
      if (this.state.history.now === text) this.store.set({ problems: answer, ...part(answer) });
    };
    const check = () => this.get('check', { command: 'check' }, into((answer) => ({ check: answer })));
    const choice = () => this.get('size', { command: 'size', all: true, ...this.jobAsked('') }, into((size) => ({ size, stale: false })), true, () => this.planHardest());
    const job = this.jobAsked(this.state.size?.choice?.envelope?.job ?? firstJob(this.state.file));
    if (job['job'] !== undefined) this.get('plan', { command: 'plan', ...job }, into((plan) => ({ plan })));
    if (area === 'choose' || area === 'papers') choice();
    check();
    // While somebody types, the quick answers must not wait behind the long one.
    clearTimeout(this.later);
    if (area === 'describe') this.later = setTimeout(choice, this.state.size ? quiet : 0);
  }

  /** The job chosen, while there still is one of that name; else another. */
  private jobAsked(other: string): { job?: string } {
    const { job, file, sheet } = this.state;
    const known = (name: string) => sheet !== null || (Array.isArray(file?.job) && file.job.some((one: any) => one?.name === name));
    if (job !== '' && known(job)) return { job };
    return other !== '' && known(other) ? { job: other } : {};
  }

  /** Without a job of one's own choice the hardest is looked at, which only the choice names. */
  private planHardest(): void {
    const job = this.state.size?.choice?.envelope?.job;
    const text = this.state.history.now;
    if (!job || this.state.plan?.plan?.jobs?.some((one: any) => one.job === job)) return;
    this.get('plan', { command: 'plan', job }, (plan) => this.state.history.now === text && this.store.set({ plan }));
  }

  private get(key: string, more: Record<string, unknown>, take: (answer: any) => void, slimmed = false, then?: () => void): void {
    this.core.ask('answer', this.request(more), { key, slimmed }).then((answer) => {
      take(answer);
      then?.();
    }, (error: Error) => {
      if (error instanceof Superseded) return;
      this.tell(`No answer: ${error.message || 'the calculation stopped twice over this file'}. Your file is untouched.`, 'warning');
    });
  }

  // --- keeping ----------------------------------------------------------------------------------------------------

  private keepSoon(): void {
    clearTimeout(this.keeping);
    this.keeping = setTimeout(() => this.keepNow(), 300);
  }
  keepNow(): void {
    const { history, name, saved, units, theme, area, job, hintSeen } = this.state;
    const kept: Kept = { text: history.now, name, units, theme, area, job, hintSeen, unsaved: saved !== history.now };
    const refused = keep(kept);
    // Once is enough: the work goes on.
    if (refused && refused !== this.said) this.tell(refusalWords[refused], 'warning');
    this.said = refused ?? '';
  }

  /** Closing the window would lose work: it is neither in a file nor kept by the browser. */
  get atRisk(): boolean {
    return this.said !== '' && this.state.saved !== this.state.history.now;
  }
}
