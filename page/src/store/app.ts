// The page's state and what may be done to it. The text of the stand file is the state; all else follows from it.
import { Superseded, type CoreClient } from '../core/client';
import type { SheetText } from '../sheet/workbook';
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
  sheet?: boolean; // a worksheet as CSV: messages then name cells
  book?: Book; // the workbook that it comes from
}

/** A workbook and which of its sheets holds the jobs; none while that is being asked. */
export interface Book {
  name: string; // of the file
  sheets: SheetText[];
  chosen: number | null;
}

export interface State {
  history: History;
  name: string; // of the file
  saved: string; // text as last opened or saved
  file: any; // parsed; of the last text that parses
  fault: string; // why the text does not parse; else empty
  sheet: Sheet | null;
  asking: Book | null; // which sheet of this workbook?
  turn: number; // counts changes of the text and of the table of jobs: answers of one turn belong together
  units: 'si' | 'us';
  theme: 'light' | 'dark';
  area: Area;
  job: string; // chosen; empty: the one that the core names
  problems: any; // the newest answer of any command: its problems, columns, defaults
  check: any; // facts of the jobs
  size: any; // every fit, jobs of each in short; the chosen job in depth. While somebody types: in brief
  plan: any;
  at: { check: number; size: number; plan: number }; // the turn that each answers
  stale: boolean; // the whole choice of this turn is still to come
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
    asking: null,
    turn: 0,
    units: kept.units === 'us' ? 'us' : 'si',
    theme: kept.theme ?? (dark ? 'dark' : 'light'),
    area: areas.find((one) => one === kept.area) ?? 'describe',
    job: kept.job ?? '',
    problems: null,
    check: null,
    size: null,
    plan: null,
    at: { check: -1, size: -1, plan: -1 },
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

/** The choice on screen answers the file as it is, at least in brief. */
export const isCurrent = (s: State): boolean => s.at.size === s.turn;
/** The plan belongs to the choice on screen. */
export const planOf = (s: State): any => (s.at.plan === s.at.size ? s.plan : null);

export class App {
  readonly store = new Store<State>(initial());
  private notices = 0;
  private said = '';
  private later: ReturnType<typeof setTimeout> | undefined;
  private keeping: ReturnType<typeof setTimeout> | undefined;

  private edited = -Infinity; // [ms] when the text last changed
  private wholeAsked = ''; // turn and job of the whole choice that is on its way

  /** Quick answers and the long one each have a core of their own, so that nobody who types waits for the long one. */
  constructor(readonly core: CoreClient, private readonly long: CoreClient = core, private readonly now = () => performance.now()) {}

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
    this.edited = this.now();
    this.store.set({ history, ...parsed(history.now, this.state.file), turn: this.state.turn + 1, stale: true });
    this.keepSoon();
    this.ask();
  }

  // --- files ------------------------------------------------------------------------------------------------------

  /** A stand file in place of the one at hand, which undo brings back. */
  open(name: string, text: string): void {
    const history = push(this.state.history, text);
    const { turn } = this.state;
    this.store.set({ name, saved: text, sheet: null, asking: null, job: '', size: null, plan: null, check: null, problems: null, turn: turn + 1, stale: true });
    if (history === this.state.history) this.ask();
    else this.to(history);
    this.edited = -Infinity; // nobody is typing
    const { fault } = this.state;
    if (fault) this.tell(`${name} is no stand file as it is: ${fault}. It is shown as text, to be mended there.`, 'warning');
    else this.tell(`${name} is open. Undo brings back what was here before.`);
  }

  addSheet(sheet: Sheet | null): void {
    this.store.set({ sheet, asking: null, turn: this.state.turn + 1, stale: true });
    this.ask();
  }

  /** A workbook: its one sheet, or the question which. */
  addBook(name: string, sheets: SheetText[]): void {
    const book: Book = { name, sheets, chosen: null };
    if (sheets.length === 1) this.chooseSheet(book, 0);
    else this.store.set({ asking: book });
  }
  chooseSheet(book: Book, chosen: number): void {
    const one = book.sheets[chosen];
    if (!one) return;
    this.addSheet({ name: book.name, text: one.text, sheet: true, book: { ...book, chosen } });
    this.tell(`Sheet ${one.name} of ${book.name} stands beside the stand file as a table of jobs. How its columns were read is said under Describe, Jobs.`);
  }
  askNothing(): void {
    this.store.set({ asking: null });
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
    const { history, name } = this.state;
    const jobs = this.jobsTable();
    return { version: 1, stand: { name, text: history.now }, ...(jobs ? { jobs } : {}), ...more };
  }
  jobsTable(): { name: string; text: string; sheet?: boolean } | null {
    const { sheet } = this.state;
    return sheet && { name: sheet.name, text: sheet.text, ...(sheet.sheet ? { sheet: true } : {}) };
  }

  /**
   * Asks for what the present area shows. First the choice in brief: margins and recommendation of every job on every fit,
   * and what is wrong with the file. Facts, pressures and the whole choice (remedies, likelihoods) wait until the hand
   * rests.
   */
  ask(): void {
    clearTimeout(this.later);
    if (!isCurrent(this.state)) return this.askBrief();
    this.askRest();
    this.askWhole();
  }

  private askBrief(): void {
    const { turn } = this.state;
    if (!this.state.size) this.askCheck(); // of a file that has just been opened: what is wrong with it, a moment sooner
    this.get(this.core, 'brief', { command: 'size', all: true, brief: true, ...this.jobAsked('') }, (answer) => {
      if (this.state.turn !== turn) return;
      // A file that cannot be computed has no more to be said of it.
      const settled = !answer.choice?.brief;
      if (this.state.at.size !== turn || this.state.size?.choice?.brief) this.took({ size: answer, ...(settled ? { stale: false } : {}) }, answer);
      // Nobody who types looks at the rest: the next keystroke's answer must not wait behind it, on screen neither.
      this.later = setTimeout(() => {
        this.askRest();
        if (!settled) this.askWhole();
      }, Math.max(0, this.edited + quiet - this.now()));
    }, true);
  }

  /** Facts of the jobs, and the pressures of the one that is looked at. */
  private askRest(): void {
    const { turn, area, at, size } = this.state;
    const job = this.jobAsked(size?.choice?.envelope?.job ?? firstJob(this.state.file))['job'];
    const planned = at.plan === turn && this.state.plan?.plan?.jobs?.some((one: any) => one.job === job);
    if ((area === 'choose' || area === 'papers') && job !== undefined && !planned)
      this.get(this.core, 'plan', { command: 'plan', job }, (plan) => this.state.turn === turn && this.took({ plan }));
    if (at.check !== turn) this.askCheck();
  }

  private askCheck(): void {
    const { turn } = this.state;
    this.get(this.core, 'check', { command: 'check' }, (check) => this.state.turn === turn && this.took({ check }, check));
  }

  private askWhole(): void {
    const { turn, stale, size } = this.state;
    const { job } = this.jobAsked('');
    if (!stale && (!size?.choice || job === undefined || size.choice.job?.job === job)) return;
    const asked = `${turn} ${job ?? ''}`;
    if (asked === this.wholeAsked) return;
    this.wholeAsked = asked;
    this.get(this.long, 'size', { command: 'size', all: true, ...(job === undefined ? {} : { job }) }, (answer) => {
      if (this.state.turn !== turn) return;
      this.wholeAsked = '';
      this.took({ size: answer, stale: false }, answer);
      this.askRest(); // the hardest job, which only the choice names
    }, true, () => (this.wholeAsked = ''));
  }

  /** An answer that an area keeps itself, over the stand as it is; of one key only the newest is answered. */
  answerOf(key: string, more: Record<string, unknown>, long = false): Promise<any> {
    return (long ? this.long : this.core).ask('answer', this.request(more), { key });
  }

  /** Takes an answer of the present turn. */
  private took(part: Partial<Pick<State, 'check' | 'size' | 'plan' | 'stale'>>, problems?: any): void {
    const { turn } = this.state;
    const at = { ...this.state.at };
    for (const key of ['check', 'size', 'plan'] as const) if (key in part) at[key] = turn;
    this.store.set({ ...part, at, ...(problems ? { problems } : {}) });
  }

  /** The job chosen, while there still is one of that name; else another. */
  private jobAsked(other: string): { job?: string } {
    const { job, file, sheet } = this.state;
    const known = (name: string) => sheet !== null || (Array.isArray(file?.job) && file.job.some((one: any) => one?.name === name));
    if (job !== '' && known(job)) return { job };
    return other !== '' && known(other) ? { job: other } : {};
  }

  private get(core: CoreClient, key: string, more: Record<string, unknown>, take: (answer: any) => void, slimmed = false, lost?: () => void): void {
    core.ask('answer', this.request(more), { key, slimmed }).then(take, (error: Error) => {
      lost?.();
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
