// The forms come from the schema of stand files, which the core's field table makes: no key, range or default is
// written down twice.
import schema from '@repo/schema/stand.schema.json';
import { kindFromExamples } from '../units';

export interface Field {
  key: string;
  title: string; // as a person reads it
  help: string; // one line
  range: string; // "5 mm to 5 m"; empty for texts and words
  kind: string; // of quantity; empty for a text, a word or a list
  words: string[]; // accepted words; empty for others
  fallback: string; // default as written; empty when there is none
  example: string;
  required: boolean;
}

/** A table or a list of tables, with those inside it. */
export interface TableInfo {
  key: string;
  help: string;
  list: boolean;
  inline: boolean; // a list that files write in brackets
  fields: Field[];
  inside: TableInfo[];
}

type Node = any;

export const titleOf = (key: string): string => key.replace(/_/g, ' ');

/** "meaning. range." as the schema joins them. A range begins with a number, a sign or "Above". */
export function splitHelp(description: string): { help: string; range: string } {
  const text = description.replace(/\.$/, '');
  const at = text.lastIndexOf('. ');
  const tail = at < 0 ? '' : text.slice(at + 2);
  return /^(?:Above )?-?\d/.test(tail) ? { help: text.slice(0, at), range: tail } : { help: text, range: '' };
}

function fieldOf(key: string, node: Node, required: readonly string[]): Field {
  const { help, range } = splitHelp(node.description ?? '');
  const examples: unknown[] = node.examples ?? [];
  const kind = node.enum || typeof node.maxLength === 'number' ? '' : kindFromExamples(examples);
  return {
    key,
    title: titleOf(key),
    help,
    range,
    kind,
    words: node.enum ?? [],
    fallback: node.default === undefined ? '' : String(node.default),
    example: examples.length > 0 ? String(examples[0]) : '',
    required: required.includes(key),
  };
}

function tableOf(key: string, node: Node): TableInfo {
  const list = node.type === 'array';
  const table = list ? node.items : node;
  const properties: [string, Node][] = Object.entries(table.properties);
  const isTable = ([, one]: [string, Node]) => one.type === 'object' || one.type === 'array';
  return {
    key,
    help: String(table.description ?? '').replace(/\.$/, ''),
    list,
    inline: key === 'cooling',
    fields: properties.filter((one) => !isTable(one)).map(([name, one]) => fieldOf(name, one, table.required ?? [])),
    inside: properties.filter(isTable).map(([name, one]) => tableOf(name, one)),
  };
}

const root: [string, Node][] = Object.entries((schema as Node).properties);

export const tables: TableInfo[] = root
  .filter(([, node]) => node.type === 'object' || node.type === 'array')
  .map(([key, node]) => tableOf(key, node));

export function table(key: string): TableInfo {
  const found = tables.find((one) => one.key === key);
  if (!found) throw new Error(`the schema has no table ${key}`);
  return found;
}
