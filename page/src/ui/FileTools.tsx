// Open, save, examples, undo, units, theme.
import { useRef } from 'preact/hooks';
import type { App } from '../store/app';
import { examples } from '../store/examples';
import { looksLikeWorkbook, sheetsOf } from '../sheet/workbook';
import { Unreadable } from '../sheet/zip';
import { bytesOf, save, textOf } from '../store/files';
import { useApp, useApped } from './context';
import { Icon } from './icons';

/** A file that was chosen or dropped: a stand file, or a table of jobs beside it. */
export async function readInto(app: App, file: File): Promise<void> {
  try {
    const bytes = await bytesOf(file);
    if (looksLikeWorkbook(file.name, bytes)) return app.addBook(file.name, await sheetsOf(bytes));
    const text = textOf(file.name, bytes);
    if (/\.(csv|tsv|txt)$/i.test(file.name)) {
      app.addSheet({ name: file.name, text });
      app.tell(`${file.name} stands beside the stand file as a table of jobs. How its columns were read is said under Describe, Jobs.`);
    } else {
      app.open(file.name, text);
    }
  } catch (error) {
    app.tell(error instanceof Unreadable ? refusal(file.name, error) : (error as Error).message, 'warning');
  }
}

const refusal = (name: string, { message, cell, accepted }: Unreadable): string =>
  `${name}${cell === '' ? '' : `:${cell}`} is not read: ${message}. Accepted: ${accepted}. Your file is untouched.`;

export function FileTools() {
  const app = useApp();
  const canUndo = useApped((s) => s.history.past.length > 0);
  const canRedo = useApped((s) => s.history.future.length > 0);
  const input = useRef<HTMLInputElement>(null);
  const saveNow = () => {
    const { name, history } = app.state;
    save(name, history.now);
    app.markSaved();
  };
  const pick = (event: Event) => {
    const from = event.currentTarget as HTMLInputElement;
    const file = from.files?.[0];
    if (file) void readInto(app, file);
    from.value = ''; // the same file may be opened again
  };
  return (
    <div class="tools" role="group" aria-label="File and view">
      <button type="button" onClick={() => app.undo()} disabled={!canUndo} title="Undo (Ctrl+Z)"><Icon name="undo" /><span>Undo</span></button>
      <button type="button" onClick={() => app.redo()} disabled={!canRedo} title="Redo (Ctrl+Y)"><Icon name="redo" /><span>Redo</span></button>
      <button type="button" id="open-file" onClick={() => input.current?.click()} title="Open a stand file, or a workbook or CSV of jobs (Ctrl+O)"><Icon name="open" /><span>Open</span></button>
      <input ref={input} id="file-input" type="file" class="unseen" tabIndex={-1} aria-label="File to open" accept=".toml,.csv,.tsv,.txt,.xlsx,.xlsm" onChange={pick} />
      <button type="button" id="save" onClick={saveNow} title="Save the stand file (Ctrl+S)"><Icon name="save" /><span>Save</span></button>
      <ExamplePicker />
      <UnitsSwitch />
      <ThemeSwitch />
    </div>
  );
}

function ExamplePicker() {
  const app = useApp();
  const pick = (event: Event) => {
    const select = event.currentTarget as HTMLSelectElement;
    const example = examples.find((one) => one.name === select.value);
    if (example) app.open(example.name, example.text);
    select.value = '';
  };
  return (
    <label class="picker">
      <span class="unseen">Start from an example</span>
      <select onChange={pick} value="">
        <option value="" disabled hidden>Examples</option>
        {examples.map((one) => <option key={one.name} value={one.name}>{one.title || one.name}</option>)}
      </select>
    </label>
  );
}

function UnitsSwitch() {
  const app = useApp();
  const units = useApped((s) => s.units);
  return (
    <div class="switch" role="group" aria-label="Units of what is shown">
      {(['si', 'us'] as const).map((one) => (
        <button key={one} type="button" aria-pressed={units === one} onClick={() => app.show({ units: one })}>{one.toUpperCase()}</button>
      ))}
    </div>
  );
}

function ThemeSwitch() {
  const app = useApp();
  const theme = useApped((s) => s.theme);
  const other = theme === 'dark' ? 'light' : 'dark';
  return (
    <button type="button" class="square" aria-label={`Switch to ${other}`} title={`Switch to ${other}`} onClick={() => app.show({ theme: other })}>
      <Icon name={other} />
    </button>
  );
}
