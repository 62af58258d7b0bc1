// A list of the file as an editable grid. Cells pasted from a spreadsheet fill it and add rows.
import { useState } from 'preact/hooks';
import { titleOf, type Field, type TableInfo } from '../schema/fields';
import { addRows, copyRow, removeRow, setValues, type Edit, type Row } from '../toml/patch';
import type { Path } from '../toml/scan';
import { useStore } from '../store/signal';
import { useApp, useApped } from '../ui/context';
import { Icon } from '../ui/icons';
import { Pages, Scroll } from '../ui/parts';
import { inOtherUnits, rangeIn } from '../unitText';
import { FieldInput } from './FieldInput';
import { mostCells, pasted, unitAbove, type Pasted } from './paste';
import { useTroubleAt } from './problems';
import { fieldName, valueAt } from './values';
import { chooseRow, listId, pageSize, where } from './where';

/** Columns that are shown even where nobody uses them yet. */
const usual: Record<string, string[]> = {
  job: ['speed', 'tension', 'share'],
  web: ['material', 'density', 'modulus'],
  roll: ['core_mass', 'runout'],
  grade: ['friction', 'friction_band', 'wear_rate'],
  idler: ['friction', 'span'],
  ply: ['modulus'],
  event: ['at', 'speed', 'duration'],
};

interface Props {
  info: TableInfo;
  path: Path; // of the list
  onChoose?(row: number): void;
  chosen?: number; // where somebody else chooses
}

const empty: Record<string, unknown>[] = [];

export function Grid({ info, path, onChoose, chosen: given }: Props) {
  const app = useApp();
  const file = useApped((s) => s.file);
  const got: unknown = valueAt(file, path);
  const rows = (Array.isArray(got) ? got : empty) as Record<string, unknown>[];
  const id = listId(path);
  const own = useStore(where, (w) => w.rows[id] ?? 0);
  const chosen = given ?? own;
  const page = Math.min(useStore(where, (w) => w.page[id] ?? 0), Math.max(0, Math.ceil(rows.length / pageSize) - 1));
  const [all, setAll] = useState(false);
  const [help, setHelp] = useState<Field | null>(null);
  const fields = all ? info.fields : info.fields.filter((one) => one.required || (usual[info.key] ?? []).includes(one.key) || rows.some((row) => row?.[one.key] !== undefined));
  const units = useApped((s) => s.units);
  const word = titleOf(info.key);
  const from = page * pageSize;

  const choose = (row: number) => {
    chooseRow(path, row);
    onChoose?.(row);
  };
  const paste = (event: ClipboardEvent) => {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    const cell = (event.target as HTMLElement).closest<HTMLElement>('td[data-row]');
    if (!cell || !/[\t\n]/.test(text.trim())) return; // one value: the input takes it
    event.preventDefault();
    const result = pasted(text, fields, Number(cell.dataset['column']), (key) => unitAbove(rows, key));
    if (!result) return app.tell(`Too much to paste at once: at most ${mostCells} cells. Save the sheet as CSV and drop that, or use the command line.`, 'warning');
    app.edit((was) => filled(was, path, result, Number(cell.dataset['row']), rows.length, info.inline));
    app.tell(pasteWords(result, word));
  };
  return (
    <div class="grid" onPaste={paste}>
      <Scroll label={`${word} table`}>
        <table>
          <thead>
            <tr>
              <th scope="col"><span class="unseen">choose</span></th>
              {fields.map((one) => (
                <th key={one.key} scope="col" title={one.help}>
                  {one.title}
                  {one.required ? null : <span class="fallback">{inOtherUnits(one.fallback, one.kind, units) || one.fallback || 'optional'}</span>}
                </th>
              ))}
              <th scope="col"><span class="unseen">copy or remove</span></th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(from, from + pageSize).map((row, i) => (
              <GridRow key={from + i} info={info} path={path} row={row} at={from + i} fields={fields} chosen={chosen === from + i} choose={choose} onHelp={setHelp} />
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="help columnhelp" aria-live="off">
        {help ? <><strong>{help.title}</strong>: {help.help}. {rangeIn(help.range, help.kind, units)}</> : `${info.help}. Cells copied from a spreadsheet may be pasted into the table.`}
      </p>
      <div class="gridtools">
        <button type="button" onClick={() => app.edit((text) => addRows(text, path, [freshRow(info, rows)], info.inline))}><Icon name="plus" /> Add a {word}</button>
        <button type="button" class="quiet" aria-pressed={all} onClick={() => setAll(!all)}>All columns</button>
        <Pages page={page} size={pageSize} count={rows.length} what={`${word}s`} go={(to) => where.set({ page: { ...where.get().page, [id]: to } })} />
      </div>
    </div>
  );
}

interface RowProps {
  info: TableInfo;
  path: Path;
  row: Record<string, unknown>;
  at: number;
  fields: Field[];
  chosen: boolean;
  choose(row: number): void;
  onHelp(field: Field): void;
}

function GridRow({ info, path, row, at, fields, chosen, choose, onHelp }: RowProps) {
  const app = useApp();
  const file = useApped((s) => s.file);
  const troubles = useTroubleAt();
  const word = titleOf(info.key);
  const name = String(row?.['name'] ?? `${word} ${at + 1}`);
  const whole = troubles.get(fieldName([...path, at]));
  return (
    <tr class={chosen ? 'chosen' : ''}>
      <th scope="row">
        <button type="button" class="rownumber" aria-pressed={chosen} aria-label={`${at + 1}, choose ${name}`} onClick={() => choose(at)}>{at + 1}</button>
      </th>
      {fields.map((field, column) => {
        const cell = [...path, at, field.key];
        return (
          <td key={field.key} data-row={at} data-column={column}>
            <FieldInput
              path={cell}
              field={field}
              value={row?.[field.key]}
              label={`${field.title} of ${name}`}
              trouble={troubles.get(fieldName(cell)) ?? (column === 0 ? whole : undefined)}
              names={namesFor(file, info.key, field.key)}
              onFocus={() => {
                onHelp(field);
                if (!chosen) choose(at);
              }}
            />
          </td>
        );
      })}
      <td class="rowtools">
        <button type="button" class="square" title="Copy" aria-label={`Copy ${name}`} onClick={() => app.edit((text) => copyRow(text, [...path, at], `${name}, copy`))}><Icon name="copy" /></button>
        <button type="button" class="square" title="Remove" aria-label={`Remove ${name}`} onClick={() => app.edit((text) => removeRow(text, [...path, at]))}><Icon name="remove" /></button>
      </td>
    </tr>
  );
}

/** Fields that name a row of another list offer those rows. */
function namesFor(file: any, table: string, key: string): string[] | undefined {
  if (table !== 'job' || (key !== 'web' && key !== 'roll')) return undefined;
  const list: unknown = file?.[key];
  return Array.isArray(list) ? list.map((one) => String((one as any)?.name ?? '')).filter(Boolean) : [];
}

/** A new row: what it must have, taken from the row before it or from the schema's example. */
export function freshRow(info: TableInfo, rows: readonly Record<string, unknown>[]): Row {
  const before = rows[rows.length - 1];
  const row: Row = {};
  for (const field of info.fields.filter((one) => one.required)) {
    const value = before?.[field.key];
    row[field.key] = typeof value === 'string' || typeof value === 'number' ? value : field.example;
  }
  if (info.fields.some((one) => one.key === 'name')) row['name'] = newName(titleOf(info.key), rows);
  return row;
}

function newName(word: string, rows: readonly Record<string, unknown>[]): string {
  const taken = new Set(rows.map((row) => row?.['name']));
  for (let i = rows.length + 1; ; ++i) if (!taken.has(`new ${word} ${i}`)) return `new ${word} ${i}`;
}

/** Pasted rows: over those that are there from `at` on, then as new ones. With a header they are always new. */
export function filled(text: string, path: Path, result: Pasted, at: number, count: number, inline: boolean): string {
  const over = result.withHeader ? 0 : Math.min(result.rows.length, count - at);
  const edits: Edit[] = result.rows.slice(0, over).flatMap((row, i) => Object.entries(row).map(([key, value]) => ({ path: [...path, at + i, key], value })));
  return addRows(setValues(text, edits), path, result.rows.slice(over).filter((row) => Object.keys(row).length > 0), inline);
}

function pasteWords(result: Pasted, word: string): string {
  const parts = [`Pasted ${result.rows.length} ${word}${result.rows.length === 1 ? '' : 's'}.`];
  for (const one of result.lent) parts.push(`${one.count} bare numbers of ${one.column} took the unit of the rows above, ${one.unit}.`);
  if (result.left.length > 0) parts.push(`Columns that mean nothing here were left out: ${result.left.slice(0, 6).join(', ')}.`);
  return parts.join(' ') + ' Undo takes it back.';
}
