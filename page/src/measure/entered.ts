// What was entered under Measure: it stays while one looks elsewhere, and the browser keeps it beside the stand file.
import { Store } from '../store/signal';

export const topics = ['tension', 'brake', 'log', 'history'] as const;
export type Topic = (typeof topics)[number];
export const methods = ['push', 'sag', 'pluck', 'pull', 'cell'] as const;
export type Method = (typeof methods)[number];

export interface Recording {
  name: string;
  base64: string;
}
/** A text that was dropped or typed: a log, a history. */
export interface Dropped {
  name: string;
  text: string;
}

export interface Entered {
  topic: Topic;
  method: Method;
  readings: Partial<Record<Method, Record<string, string>>>; // as typed; repeats parted by semicolons
  recording: Recording | null;
  table: string[][]; // readings at the brake, the first row names the columns
  tableName: string;
  brake: string; // empty: the recommended one
  grade: string;
  log: Dropped | null;
  columns: string; // of the log, where its header does not tell
  rate: string; // of its rows, where it has no times
  from: string; // the part of it that is read
  to: string;
  history: Dropped | null;
}

export const emptyTable = (): string[][] => [['pressure [bar]', 'torque [N*m]', 'pairs', 'direction'], ...Array.from({ length: 6 }, () => ['', '', '', ''])];

const place = 'holdback.measure.1';
const kept = ['topic', 'method', 'readings', 'table', 'tableName', 'brake', 'grade', 'columns', 'rate', 'from', 'to'] as const;

function recalled(): Partial<Entered> {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(place) ?? 'null');
    if (typeof found !== 'object' || found === null) return {};
    const { topic, method, readings, table } = found as Partial<Entered>;
    const sound = topics.includes(topic as Topic) && methods.includes(method as Method) && typeof readings === 'object' && readings !== null
      && Array.isArray(table) && table.length > 0 && table.every((row) => Array.isArray(row) && row.every((cell) => typeof cell === 'string'));
    return sound ? (found as Partial<Entered>) : {};
  } catch {
    return {};
  }
}

export const entered = new Store<Entered>({
  topic: 'tension', method: 'push', readings: {}, recording: null, table: emptyTable(), tableName: 'readings', brake: '', grade: '', log: null, columns: '', rate: '', from: '', to: '', history: null,
  ...recalled(),
});

let keeping: ReturnType<typeof setTimeout> | undefined;
entered.watch(() => {
  clearTimeout(keeping);
  keeping = setTimeout(() => {
    const now = entered.get();
    try {
      localStorage.setItem(place, JSON.stringify(Object.fromEntries(kept.map((key) => [key, now[key]]))));
    } catch {
      // The page has said that this browser keeps nothing, or is full.
    }
  }, 400);
});

/** "12.1 N; 12.0 N" → each reading of its own. */
export const parted = (text: string): string[] => text.split(/[;\n]/).map((one) => one.trim()).filter((one) => one !== '');

/** What is asked of the core: only keys with something in them. */
export const readingsOf = (typed: Record<string, string> | undefined): Record<string, string[]> =>
  Object.fromEntries(Object.entries(typed ?? {}).map(([key, text]): [string, string[]] => [key, parted(text)]).filter(([, list]) => list.length > 0));

const quoted = (cell: string): string => (/[,"\n\r]/.test(cell) ? `"${cell.replace(/"/g, '""')}"` : cell);

/** The grid as CSV. Columns without a head and rows without a cell are left out at the end, so that rows keep their numbers. */
export function tableCsv(table: readonly (readonly string[])[]): string {
  const used = (row: readonly string[]) => row.some((cell) => cell.trim() !== '');
  let last = table.length - 1;
  while (last > 0 && !used(table[last]!)) --last;
  const width = Math.max(0, ...table.slice(0, last + 1).map((row) => row.reduce((most, cell, i) => (cell.trim() === '' ? most : i + 1), 0)));
  return table.slice(0, last + 1).map((row) => Array.from({ length: width }, (_, i) => quoted((row[i] ?? '').trim())).join(',')).join('\n') + '\n';
}

/** True when there is a reading below the head. */
export const hasRows = (table: readonly (readonly string[])[]): boolean => table.slice(1).some((row) => row.some((cell) => cell.trim() !== ''));

/** Bytes as the core takes them in JSON (RFC 4648). */
export function base64Of(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 0x6000) parts.push(btoa(String.fromCharCode(...bytes.subarray(at, at + 0x6000))));
  return parts.join('');
}
