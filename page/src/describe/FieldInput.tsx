// One value of the file: typed as text with its unit, kept in the file as typed.
import { useRef, useState } from 'preact/hooks';
import type { Field } from '../schema/fields';
import { setValue } from '../toml/patch';
import type { Path } from '../toml/scan';
import { useApp, useApped } from '../ui/context';
import { inOtherUnits } from '../unitText';
import type { Trouble } from './problems';
import { shownValue, typed } from './values';
import { inputId } from './where';

let sessions = 0;

interface Props {
  path: Path;
  field: Field;
  value: unknown;
  label?: string; // where no <label> stands beside it
  trouble?: Trouble | undefined;
  describedBy?: string;
  names?: string[]; // of webs, rolls …: one of these is due
  onFocus?(): void;
}

/** What was typed and what it made of the value: shown instead of the value while nobody else has changed it. */
interface Draft {
  text: string;
  made: string;
}

export function FieldInput({ path, field, value, label, trouble, describedBy, names, onFocus }: Props) {
  const app = useApp();
  const units = useApped((s) => s.units);
  const session = useRef(0);
  const [draft, setDraft] = useState<Draft | null>(null);
  const id = inputId(path);
  const said = shownValue(value);
  const shown = draft && draft.made === said ? draft.text : said;

  // The file's own unit stays; its value in the reader's units stands beside it.
  const other = inOtherUnits(shown === '' ? field.fallback : shown, field.kind, units);

  const write = (text: string) => {
    const next = typed(field, text);
    setDraft({ text, made: shownValue(next) });
    app.edit((file) => setValue(file, path, next), `${id}#${session.current}`);
  };
  const common = {
    id,
    'aria-label': label,
    'aria-invalid': trouble?.severity === 'error' ? ('true' as const) : undefined,
    'aria-describedby': [trouble ? `${id}-trouble` : '', other === '' ? '' : `${id}-other`, describedBy ?? ''].filter(Boolean).join(' ') || undefined,
    'aria-required': field.required ? ('true' as const) : undefined,
    onFocus: () => {
      session.current = ++sessions;
      onFocus?.();
    },
    onBlur: () => setDraft(null),
  };
  return (
    <>
      {field.words.length > 0 || names ? (
        <Choice common={common} shown={shown} words={names ?? field.words} fallback={field.fallback} write={write} />
      ) : (
        <span class={other === '' ? 'valued' : 'valued twice'}>
          <input
            {...common}
            class={field.kind ? 'quantity' : 'text'}
            type="text"
            autocomplete="off"
            spellcheck={false}
            value={shown}
            placeholder={field.fallback || (field.required ? field.example : '')}
            onInput={(event) => write(event.currentTarget.value)}
          />
          {other === '' ? null : <span class="other" id={`${id}-other`}>= {other}</span>}
        </span>
      )}
      {trouble ? <p class={`trouble ${trouble.severity}`} id={`${id}-trouble`}>{trouble.text}</p> : null}
    </>
  );
}

function Choice({ common, shown, words, fallback, write }: { common: Record<string, unknown>; shown: string; words: string[]; fallback: string; write(text: string): void }) {
  const known = shown === '' || words.includes(shown);
  return (
    <select {...common} value={shown} onChange={(event) => write(event.currentTarget.value)}>
      <option value="">{fallback ? `${fallback} (usual)` : '—'}</option>
      {known ? null : <option value={shown}>{shown} (unknown)</option>}
      {words.map((one) => <option key={one} value={one}>{one}</option>)}
    </select>
  );
}
