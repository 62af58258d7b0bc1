// Which part of the description is looked at: chosen in the list, by touching the drawing, or by a problem.
import { Store } from '../store/signal';
import type { Path } from '../toml/scan';

export const sections = [
  { key: 'job', title: 'Jobs', tables: ['job'] },
  { key: 'web', title: 'Webs', tables: ['web'] },
  { key: 'roll', title: 'Rolls', tables: ['roll'] },
  { key: 'brake', title: 'Brakes', tables: ['brake'] },
  { key: 'line', title: 'Line', tables: ['line'] },
  { key: 'air', title: 'Air', tables: ['air'] },
  { key: 'stand', title: 'Stand', tables: ['stand'] },
  { key: 'limits', title: 'Limits', tables: ['limits', 'uncertainty'] },
  { key: 'path', title: 'Web path', tables: ['path', 'idler'] },
  { key: 'shaft', title: 'Shaft', tables: ['shaft'] },
  { key: 'control', title: 'Control', tables: ['control', 'load_cell', 'dancer', 'diameter_sensor'] },
  { key: 'scenario', title: 'Scenarios', tables: ['scenario'] },
  { key: 'text', title: 'File as text', tables: [] },
] as const;

export type SectionKey = (typeof sections)[number]['key'];

export interface Where {
  section: SectionKey;
  rows: Record<string, number>; // chosen row of each list, by its path
  page: Record<string, number>; // of a long list
}

export const where = new Store<Where>({ section: 'job', rows: {}, page: {} });

export const sectionOf = (table: string): SectionKey =>
  (sections.find((one) => (one.tables as readonly string[]).includes(table))?.key) ?? 'text';

export const listId = (path: Path): string => JSON.stringify(path);
export const pageSize = 40;

export function chooseRow(list: Path, row: number): void {
  const { rows, page } = where.get();
  where.set({ rows: { ...rows, [listId(list)]: row }, page: { ...page, [listId(list)]: Math.floor(row / pageSize) } });
}

/** Shows the input of a field and puts the cursor there, once it is drawn. */
export function goTo(path: Path): void {
  where.set({ section: sectionOf(String(path[0] ?? '')) });
  path.forEach((part, i) => typeof part === 'number' && chooseRow(path.slice(0, i), part));
  const id = inputId(path);
  setTimeout(() => {
    const input = document.getElementById(id);
    input?.scrollIntoView({ block: 'center' });
    input?.focus();
  }, 60);
}

export const inputId = (path: Path): string => 'in-' + path.join('-');

/** Names that the drawing has for its parts, and what they open. */
const parts: [RegExp, SectionKey][] = [
  [/limit/, 'limits'],
  [/nip|line|speed/, 'line'],
  [/roll|core/, 'roll'],
  [/brake|disc|pad|caliper/, 'brake'],
  [/guard|ambient|stand/, 'stand'],
  [/air|regulator|pressure|valve/, 'air'],
  [/idler|path|span/, 'path'],
  [/cell|dancer|sensor|control/, 'control'],
  [/shaft/, 'shaft'],
  [/web/, 'web'],
  [/tension|job/, 'job'],
];
export const sectionOfPart = (part: string): SectionKey => parts.find(([name]) => name.test(part))?.[1] ?? 'stand';
