// A table of the file as a form: each input with its unit, range, default and a line on what it does.
import { useState } from 'preact/hooks';
import type { Field, TableInfo } from '../schema/fields';
import { titleOf } from '../schema/fields';
import { setValue } from '../toml/patch';
import type { Path } from '../toml/scan';
import { useApp, useApped } from '../ui/context';
import { rangeIn } from '../unitText';
import { FieldInput } from './FieldInput';
import { useTroubleAt } from './problems';
import { fieldName, valueAt } from './values';
import { inputId } from './where';

export function Form({ info, path, shown }: { info: TableInfo; path: Path; shown?: (field: Field) => boolean }) {
  const file = useApped((s) => s.file);
  const troubles = useTroubleAt();
  const values = valueAt(file, path) ?? {};
  const [all, setAll] = useState(false);
  const visible = info.fields.filter((one) => all || !shown || shown(one) || values[one.key] !== undefined || troubles.has(fieldName([...path, one.key])));
  const hidden = info.fields.length - visible.length;
  return (
    <div class="form">
      <div class="fields">
        {visible.map((field) => (
          <Labelled key={field.key} field={field} path={[...path, field.key]} value={values[field.key]} />
        ))}
      </div>
      {hidden > 0 || all ? (
        <button type="button" class="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'Fewer inputs' : `${hidden} more inputs`}
        </button>
      ) : null}
    </div>
  );
}

function Labelled({ field, path, value }: { field: Field; path: Path; value: unknown }) {
  const trouble = useTroubleAt().get(fieldName(path));
  const units = useApped((s) => s.units);
  const id = inputId(path);
  return (
    <div class="field">
      <label for={id}>
        {field.title}
        {field.required ? <span class="need"> required</span> : null}
      </label>
      <FieldInput path={path} field={field} value={value} trouble={trouble} describedBy={`${id}-help`} />
      <p class="help" id={`${id}-help`}>
        {field.help}
        {field.range ? <span class="range"> {rangeIn(field.range, field.kind, units)}</span> : null}
      </p>
    </div>
  );
}

/** A table that may be left out of the file: what leaving it out means is its help. */
export function OptionalForm({ info }: { info: TableInfo }) {
  const app = useApp();
  const there = useApped((s) => s.file?.[info.key] !== undefined);
  if (there) return <Form info={info} path={[info.key]} />;
  return (
    <div class="absent">
      <p>{info.help}.</p>
      <button type="button" onClick={() => app.edit((text) => addTable(text, info))}>Describe the {titleOf(info.key)}</button>
    </div>
  );
}

/** An empty table, or one with an example of each value that it needs. */
function addTable(text: string, info: TableInfo): string {
  const needed = info.fields.filter((one) => one.required);
  if (needed.length > 0) return needed.reduce((out, one) => setValue(out, [info.key, one.key], one.example), text);
  return `${text.replace(/\n*$/, '\n')}\n[${info.key}]\n`;
}
