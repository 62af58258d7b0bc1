// What the brake really does: readings of pressure and torque or tension, the constants that they show, what that means,
// and the way into the stand file.
import { useMemo } from 'preact/hooks';
import { Chart, type ChartData, type Series } from '../chart/Chart';
import { fitWords, sentence } from '../choose/words';
import { cellsOf, signOf } from '../describe/paste';
import { titleOf } from '../schema/fields';
import { textOf } from '../store/files';
import { useStore } from '../store/signal';
import { useApp, useApped } from '../ui/context';
import { Icon } from '../ui/icons';
import { Num, Scroll, Section } from '../ui/parts';
import { noteText, show } from '../units';
import { emptyTable, entered, hasRows, tableCsv } from './entered';
import { Share } from './Measured';
import { anyText, Assumed, FileDrop, Mind, Notes, Problems } from './parts';
import { useAnswer } from './useAnswer';

const mostTable = 2_000_000; // bytes

export function BrakeReadings() {
  const app = useApp();
  const table = useStore(entered, (s) => s.table);
  const name = useStore(entered, (s) => s.tableName);
  const brake = useStore(entered, (s) => s.brake);
  const brakes = useApped((s) => s.file?.brake) as any[] | undefined;
  const names = (Array.isArray(brakes) ? brakes : []).map((one) => String(one?.name ?? '')).filter(Boolean);
  const text = tableCsv(table);
  const asked = names.includes(brake) ? brake : '';
  const chosenGrade = useStore(entered, (s) => s.grade);
  const grades: string[] = [...new Set((Array.isArray(brakes) ? brakes : []).filter((one) => asked === '' || one?.name === asked).flatMap((one) => (Array.isArray(one?.grade) ? one.grade.map((each: any) => String(each?.name ?? '')) : [])))].filter(Boolean);
  const grade = grades.includes(chosenGrade) ? chosenGrade : '';
  const request = useMemo(() => (hasRows(table) ? { command: 'fit', table: { name, text }, write: true, ...(asked ? { brake: asked } : {}), ...(grade ? { grade } : {}) } : null), [text, name, asked, grade]);
  const got = useAnswer('fit', request, true);
  const fit = got.answer?.fit;
  const take = (file: string, bytes: Uint8Array) => {
    const text = textOf(file, bytes);
    const all = cellsOf(text, signOf(text));
    const rows = all.slice(Math.max(0, all.findIndex((row) => row.filter((cell) => cell !== '').length > 1))); // below a title
    if (rows.length < 2) return app.tell(`${file} holds no table of readings: a head that names the columns, and a row for each reading.`, 'warning');
    entered.set({ table: rows, tableName: file });
  };
  return (
    <>
      <section class="block" aria-labelledby="brake-readings">
        <header class="blockhead">
          <h2 id="brake-readings">Readings at the brake</h2>
          <span class="help">Pressure from low to high and back; torque at the shaft, or tension with the diameter of the roll. One with the brake released tells the drag.</span>
        </header>
        <div class="measurehead">
          <label class="picker"><span>Brake </span>
            <select value={asked} onChange={(event) => entered.set({ brake: event.currentTarget.value })}>
              <option value="">the recommended one</option>
              {names.map((one) => <option key={one} value={one}>{one}</option>)}
            </select>
          </label>
          <label class="picker"><span>Grade </span>
            <select value={grade} onChange={(event) => entered.set({ grade: event.currentTarget.value })}>
              <option value="">as recommended</option>
              {grades.map((one) => <option key={one} value={one}>{one}</option>)}
            </select>
          </label>
          <FileDrop label="Open a table (CSV)" accept=".csv,.tsv,.txt" most={mostTable} onFile={(file, bytes) => take(file, new TextEncoder().encode(anyText(bytes).text))} />
        </div>
        <ReadingsGrid table={table} problems={got.answer?.problems} name={name} />
        <Problems answer={got.answer} />
        {got.fault ? <p class="trouble error" role="alert">No answer: {got.fault}.</p> : null}
      </section>
      {fit ? <div class={got.behind ? 'stale' : ''} aria-busy={got.behind} id="fitted"><Fitted fit={fit} /></div> : request ? null : <p class="empty">Write readings above, paste them from a spreadsheet, or open a CSV. Two pressures are the least; five, up and down, say more.</p>}
    </>
  );
}

/** The first row names the columns; cells pasted from a spreadsheet fill it from where they are pasted. */
function ReadingsGrid({ table, problems, name }: { table: string[][]; problems: any[] | undefined; name: string }) {
  const columns = Math.max(...table.map((row) => row.length));
  const write = (row: number, column: number, text: string) =>
    entered.set({ table: table.map((cells, y) => (y === row ? Array.from({ length: columns }, (_, x) => (x === column ? text : cells[x] ?? '')) : cells)) });
  const paste = (event: ClipboardEvent) => {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    const cell = (event.target as HTMLElement).closest<HTMLElement>('[data-row]');
    if (!cell || !/[\t\n]/.test(text.trim())) return;
    event.preventDefault();
    const cells = cellsOf(text).slice(0, 2001);
    const [y0, x0] = [Number(cell.dataset['row']), Number(cell.dataset['column'])];
    // A head among what is pasted goes where heads stand.
    const heads = y0 > 0 && cells.length > 1 && cells[0]!.every((one) => !/^[-+]?\d/.test(one)) && cells[1]!.some((one) => /^[-+]?\d/.test(one));
    const from = heads ? 0 : y0;
    const at = heads ? 0 : x0;
    const wide = Math.max(columns, at + Math.max(...cells.map((row) => row.length)));
    const rows = Math.max(heads ? cells.length : table.length, from + cells.length);
    entered.set({ table: Array.from({ length: rows }, (_, y) => Array.from({ length: wide }, (__, x) => cells[y - from]?.[x - at] ?? (heads ? '' : table[y]?.[x]) ?? '')) });
  };
  const wrong = (row: number) => problems?.find((one) => one.severity === 'error' && one.file === name && one.line === row + 1);
  return (
    <div class="grid" onPaste={paste}>
      <Scroll label="table of readings" tall>
        <table>
          <thead><tr>
            <th scope="col"><span class="unseen">row</span></th>
            {Array.from({ length: columns }, (_, x) => (
              <th key={x} scope="col" data-row={0} data-column={x}><input type="text" class="columnname" aria-label={`name and unit of column ${x + 1}`} value={table[0]?.[x] ?? ''} onInput={(event) => write(0, x, event.currentTarget.value)} /></th>
            ))}
          </tr></thead>
          <tbody>
            {table.slice(1, 201).map((cells, i) => (
              <tr key={i}>
                <th scope="row" class={wrong(i + 1) ? 'trouble error' : ''}>{i + 1}</th>
                {Array.from({ length: columns }, (_, x) => (
                  <td key={x} data-row={i + 1} data-column={x}><input type="text" aria-label={`${table[0]?.[x] || `column ${x + 1}`} of reading ${i + 1}`} value={cells[x] ?? ''} onInput={(event) => write(i + 1, x, event.currentTarget.value)} /></td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {table.length > 201 ? <p class="help">{table.length - 201} more readings are counted, not shown.</p> : null}
      <div class="gridtools">
        <button type="button" onClick={() => entered.set({ table: [...table, ...Array.from({ length: 4 }, () => Array.from({ length: columns }, () => ''))] })}><Icon name="plus" /> Add rows</button>
        <button type="button" class="quiet" onClick={() => entered.set({ table: table.map((row, y) => [...Array.from({ length: columns }, (_, x) => row[x] ?? ''), y === 0 ? 'diameter [mm]' : '']) })}>Add a column</button>
        <button type="button" class="quiet" onClick={() => entered.set({ table: emptyTable(), tableName: 'readings' })}>Clear</button>
        <span class="help">Columns are found by name: pressure, torque or tension, diameter, pairs, direction (rising, falling), temperature, note.</span>
      </div>
    </div>
  );
}

function Fitted({ fit }: { fit: any }) {
  const units = useApped((s) => s.units);
  return (
    <>
      <section class="block" aria-labelledby="brake-verdict">
        <header class="blockhead"><h2 id="brake-verdict">What the readings show</h2><span class="help">{fitWords(fit.fit)}</span></header>
        <ol class="causes">
          {fit.verdicts.map((one: any, i: number) => (
            <li key={i} class={one.cause}>
              <h3>{sentence(noteText(one.what, units))}{one.share === undefined ? null : <span class="share"><Share share={one.share} /> <Num value={one.share} kind="ratio" units={units} /></span>}</h3>
              {one.evidence.text ? <p>{sentence(noteText(one.evidence, units))}</p> : null}
              {one.remedy.text ? <p class="help">To do: {sentence(noteText(one.remedy, units))}</p> : null}
            </li>
          ))}
        </ol>
        <Notes notes={fit.not_told} title="What these readings cannot tell apart" />
      </section>
      <Mind label="Mind of the fit" notes={fit.cautions} />
      {fit.sufficient ? <Constants fit={fit} /> : null}
      <div class="charts"><Chart data={readingsChart(fit)} units={units} note="Each reading, and what the fitted brake gives." /></div>
      <Next list={fit.next} />
      <TakeOver fit={fit} />
      <Assumed notes={fit.assumptions} />
    </>
  );
}

function Constants({ fit }: { fit: any }) {
  const units = useApped((s) => s.units);
  const rows: { name: string; key: string; kind: string; file: string; note?: string }[] = [
    { name: 'torque per pressure of one pair', key: 'torque_per_pressure', kind: 'torque_per_pressure', file: 'torque_per_pressure_in_file' },
    { name: 'friction, of the grade’s nominal', key: 'friction_share', kind: 'ratio', file: '' },
    { name: 'threshold, as the gauge shows it', key: 'threshold', kind: 'pressure', file: 'threshold_in_file' },
    { name: 'drag of shaft and brakes', key: 'drag', kind: 'torque', file: 'drag_in_file', ...(fit.drag_read ? {} : { note: 'from the file' }) },
    { name: 'hysteresis', key: 'hysteresis', kind: 'pressure', file: '' },
  ];
  return (
    <Section title="The brake’s constants" id="constants">
      <Scroll label="constants of the brake">
        <table class="plain">
          <thead><tr><th scope="col">constant</th><th scope="col">fitted</th><th scope="col">95 % interval</th><th scope="col">in the file</th></tr></thead>
          <tbody>
            {rows.filter((row) => fit[row.key] !== undefined).map((row) => (
              <tr key={row.key}>
                <th scope="row">{row.name}{row.note ? <span class="help"> {row.note}</span> : null}</th>
                <td><Num value={fit[row.key]} kind={row.kind} units={units} /></td>
                <td>{show(fit[`${row.key}_low`], row.kind, units)} to {show(fit[`${row.key}_high`], row.kind, units)}</td>
                <td>{row.file && fit[row.file] !== undefined ? <Num value={fit[row.file]} kind={row.kind} units={units} /> : row.key === 'friction_share' ? `${show(fit.band_low, 'ratio', units)} to ${show(fit.band_high, 'ratio', units)}` : ''}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="help">Scatter about the fit {show(fit.scatter, 'torque', units)}; {fit.outliers === 0 ? 'no reading is left out' : `${fit.outliers} left out as too far off`}.{fit.median_torque_per_pressure > 0 ? ` By repeated medians the torque per pressure is ${show(fit.median_torque_per_pressure, 'torque_per_pressure', units)}.` : ''}</p>
    </Section>
  );
}

export function readingsChart(fit: any): ChartData {
  const readings: any[] = [...fit.readings].sort((a, b) => a.pressure - b.pressure);
  const marked = (name: string, list: any[], role: Series['role']): Series[] => (list.length === 0 ? [] : [{ name, role, marks: 'points', at: list.map((one) => one.pressure), values: list.map((one) => one.torque) }]);
  const pairs = [...new Set(readings.map((one) => one.pairs as number))].sort((a, b) => b - a);
  const roles: Series['role'][] = ['main', 'second', 'third', 'fourth', 'fifth'];
  return {
    title: 'Torque over pressure',
    x: { name: 'pressure', kind: 'pressure', values: [0, ...readings.map((one) => one.pressure)] },
    y: { name: 'torque', kind: 'torque' },
    series: [
      ...(fit.sufficient ? pairs.map((count, i): Series => {
        const list = readings.filter((one) => one.pairs === count);
        return { name: `fitted, ${count} pair${count === 1 ? '' : 's'}`, role: roles[Math.min(i, 4)]!, at: list.map((one) => one.pressure), values: list.map((one) => one.fitted) };
      }) : []),
      ...marked('read', readings.filter((one) => !one.outlier), 'main'),
      ...marked('left out', readings.filter((one) => one.outlier), 'limit'),
    ],
  };
}

function Next({ list }: { list: any[] }) {
  const units = useApped((s) => s.units);
  if (!list?.length) return null;
  const half = (value: number, kind: string) => (value > 0 ? `±\u00a0${show(value, kind, units)}` : 'not known');
  return (
    <Section title="Readings to take next" id="next-readings">
      <Scroll label="readings to take next">
        <table class="plain">
          <thead><tr><th scope="col">pressure</th><th scope="col">pairs</th><th scope="col">torque to expect</th><th scope="col">torque per pressure, now and then</th><th scope="col">threshold, now and then</th></tr></thead>
          <tbody>
            {list.map((one, i) => (
              <tr key={i}>
                <td>{one.pressure > 0 ? <Num value={one.pressure} kind="pressure" units={units} /> : 'brake released'}</td>
                <td>{one.pairs}</td>
                <td><Num value={one.torque} kind="torque" units={units} /></td>
                <td>{half(one.slope_now, 'ratio')} → {half(one.slope_then, 'ratio')}</td>
                <td>{half(one.threshold_now, 'pressure')} → {half(one.threshold_then, 'pressure')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

/** The fitted brake in place of the catalogue's: every other answer then uses it. */
function TakeOver({ fit }: { fit: any }) {
  const app = useApp();
  const units = useApped((s) => s.units);
  const current = useApped((s) => s.history.now);
  if (fit.refusal) return <Section title="Into the stand file" id="take-over"><p>{sentence(noteText(fit.refusal, units))}</p></Section>;
  if (!fit.stand_file || fit.changes.length === 0) return null;
  const taken = fit.stand_file === current;
  const take = () => {
    app.write(fit.stand_file, '');
    app.tell('The fitted brake stands in the stand file, and every answer uses it. Undo takes it back.');
  };
  return (
    <Section title="Into the stand file" id="take-over">
      <Scroll label="changes of the stand file">
        <table class="plain">
          <thead><tr><th scope="col">of</th><th scope="col">value</th><th scope="col">now</th><th scope="col">then</th></tr></thead>
          <tbody>{fit.changes.map((one: any, i: number) => <tr key={i}><td>{one.owner}</td><th scope="row">{titleOf(one.key)}</th><td>{one.before || 'not there'}</td><td>{one.after}</td></tr>)}</tbody>
        </table>
      </Scroll>
      <button type="button" class="primary" disabled={taken} onClick={take}>{taken ? 'Taken over' : 'Take over into the stand file'}</button>
    </Section>
  );
}
