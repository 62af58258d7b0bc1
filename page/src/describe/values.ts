// Between what a person types and what the file says.
import type { Field } from '../schema/fields';
import type { Path } from '../toml/scan';

/** Kinds that files write as plain numbers when no unit is typed. */
const plain = new Set(['number', 'ratio', 'count', 'price']);

/** What to write for a typed text; null takes the key away, so that its default holds. */
export function typed(field: Field, text: string): string | number | null {
  if (text.trim() === '') return null;
  const trimmed = text.trim();
  if (plain.has(field.kind) && /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(trimmed)) return Number(trimmed);
  return text; // texts and quantities stay as typed: the core reads them
}

/** What the file says, for an input. */
export const shownValue = (value: unknown): string => (value === undefined || value === null ? '' : typeof value === 'object' ? '' : String(value));

export const valueAt = (file: any, path: Path): any => path.reduce((inside: any, part) => inside?.[part], file);

/** job[0].speed, as the core names fields. */
export const fieldName = (path: Path): string => path.map((part, i) => (typeof part === 'number' ? `[${part}]` : (i > 0 ? '.' : '') + part)).join('');

/** The path of a core's field name. */
export const pathOf = (name: string): Path =>
  [...name.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map((m) => (m[2] === undefined ? (m[1] ?? '') : Number(m[2])));

/** The unit that a text ends with: "300 m/min" → "m/min". */
export const unitIn = (text: string): string => /^\s*[-+]?[\d.,]+(?:e[-+]?\d+)?\s*([^\d\s].*)$/i.exec(text)?.[1]?.trim() ?? '';
