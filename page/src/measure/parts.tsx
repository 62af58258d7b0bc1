// What the parts of Measure share.
import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { sentence } from '../choose/words';
import { troubleOf, type Trouble } from '../describe/problems';
import { bytesOf } from '../store/files';
import { useApp, useApped } from '../ui/context';
import { Mark, Section } from '../ui/parts';
import { useJob } from '../ui/stand';
import { kinds, noteText, type Units } from '../units';
import { inOtherUnits } from '../unitText';

/** The job whose web and window count. */
export function JobPicker() {
  const app = useApp();
  const job = useJob();
  const inFile = useApped((s) => s.file?.job) as any[] | undefined;
  const checked = useApped((s) => s.check?.check?.jobs as any[] | undefined);
  const names: string[] = checked?.map((one) => String(one.job)) ?? (Array.isArray(inFile) ? inFile.map((one) => String(one?.name ?? '')) : []);
  return (
    <label class="picker">
      <span>Job </span>
      <select value={job} onChange={(event) => app.choose(event.currentTarget.value)}>
        {names.includes(job) ? null : <option value={job}>{job || 'none'}</option>}
        {names.map((one) => <option key={one} value={one}>{one}</option>)}
      </select>
    </label>
  );
}

/** Every problem that stands at no field of the form. */
export function Problems({ answer, except }: { answer: any; except?: readonly string[] }) {
  const units = useApped((s) => s.units);
  const name = useApped((s) => s.name);
  const list = ((answer?.problems ?? []) as any[]).filter((one) => !except?.includes(one.field));
  if (list.length === 0) return null;
  const errors = list.some((one) => one.severity === 'error');
  return (
    <div class={errors ? 'found errors' : 'found'} role={errors ? 'alert' : undefined}>
      <ul>
        {list.slice(0, 30).map((one, i) => {
          const { text, place } = troubleOf(one, units, name);
          return (
            <li key={i} class={one.severity}>
              <Mark state={one.severity === 'error' ? 'fails' : 'tight'} />
              <span><strong>{one.severity === 'error' ? 'Mend' : 'Know'}{one.field ? `: ${one.field}` : ''}</strong> {text}{place ? <span class="range"> {place}</span> : null}</span>
            </li>
          );
        })}
      </ul>
      {list.length > 30 ? <p class="help">{list.length - 30} more.</p> : null}
    </div>
  );
}

export function Notes({ notes, title }: { notes: any[] | undefined; title?: string }) {
  const units = useApped((s) => s.units);
  if (!notes?.length) return null;
  return (
    <>
      {title ? <h3>{title}</h3> : null}
      <ul class="notes">{notes.map((one, i) => <li key={i}>{sentence(noteText(one, units))}</li>)}</ul>
    </>
  );
}

export function Mind({ notes, label }: { notes: any[] | undefined; label: string }) {
  const units = useApped((s) => s.units);
  const lines = (notes ?? []).map((one) => sentence(noteText(one, units)));
  if (lines.length === 0) return null;
  return (
    <section class="cautions" aria-label={label}>
      <h2>Mind</h2>
      <ul>{lines.map((one) => <li key={one}>{one}</li>)}</ul>
    </section>
  );
}

export function Assumed({ notes }: { notes: any[] | undefined }) {
  return notes?.length ? <Section title="What the numbers stand on" id="measure-assumptions"><Notes notes={notes} /></Section> : null;
}

interface Typed {
  id: string;
  label: string;
  needed?: boolean;
  value: string;
  other?: string; // what the value is in the reader's units
  placeholder: string;
  help: ComponentChildren;
  troubles: Trouble[];
  onType(text: string): void;
}

export function TypedInput({ id, label, needed, value, other = '', placeholder, help, troubles, onType }: Typed) {
  return (
    <div class="field">
      <label for={id}>{label}{needed ? <span class="need"> needed</span> : null}</label>
      <span class={other === '' ? 'valued' : 'valued twice'}>
        <input
          id={id} type="text" autocomplete="off" spellcheck={false} value={value} placeholder={placeholder}
          aria-required={needed ? 'true' : undefined}
          aria-invalid={troubles[0]?.severity === 'error' ? 'true' : undefined}
          aria-describedby={troubles.length > 0 ? `${id}-trouble ${id}-help` : `${id}-help`}
          onInput={(event) => onType(event.currentTarget.value)}
        />
        {other === '' ? null : <span class="other">= {other}</span>}
      </span>
      {troubles.length > 0 ? <div id={`${id}-trouble`}>{troubles.map((one, i) => <p key={i} class={`trouble ${one.severity}`}>{one.text}</p>)}</div> : null}
      <p class="help" id={`${id}-help`}>{help}</p>
    </div>
  );
}

/** A file that is dropped on this part, or chosen. Hands its bytes on. */
export function FileDrop({ label, accept, most, onFile, children }: { label: string; accept: string; most: number; onFile(name: string, bytes: Uint8Array): void; children?: ComponentChildren }) {
  const app = useApp();
  const input = useRef<HTMLInputElement>(null);
  const take = async (file: File | undefined) => {
    if (!file) return;
    try {
      onFile(file.name, await bytesOf(file, most));
    } catch (error) {
      app.tell((error as Error).message, 'warning');
    }
  };
  return (
    <div class="filedrop" onDragOver={(event) => event.preventDefault()} onDrop={(event) => {
      event.preventDefault();
      event.stopPropagation();
      void take(event.dataTransfer?.files[0]);
    }}>
      <button type="button" onClick={() => input.current?.click()}>{label}</button>
      <input ref={input} type="file" class="unseen" tabIndex={-1} aria-label={label} accept={accept} onChange={(event) => {
        void take(event.currentTarget.files?.[0]);
        event.currentTarget.value = '';
      }} />
      <span class="help">or drop it here</span>
      {children}
    </div>
  );
}

/** A text in UTF-8, or as older loggers write it. */
export function anyText(bytes: Uint8Array): { text: string; old: boolean } {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), old: false };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), old: true };
  }
}

/** How a reading of this kind may be written, in the reader's units. */
export function exampleOf(kind: string, units: Units): string {
  const examples = kinds[kind]?.examples.split('|') ?? [];
  return examples.find((one) => inOtherUnits(one, kind, units) === '') ?? examples[0] ?? '';
}
