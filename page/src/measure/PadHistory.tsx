// What was read, measured and changed over the years, by the table that `holdback history show --csv` writes, and when
// pads are due. The page adds no entries: a browser has no file that two people may write to.
import { useMemo } from 'preact/hooks';
import { Chart, type ChartData, type Series } from '../chart/Chart';
import { titleOf } from '../schema/fields';
import { useStore } from '../store/signal';
import { useApped } from '../ui/context';
import { Num, Scroll, Section } from '../ui/parts';
import { show, type Units } from '../units';
import { entered } from './entered';
import { anyText, Assumed, FileDrop, Mind, Notes, Problems } from './parts';
import { useAnswer } from './useAnswer';

const mostHistory = 20_000_000; // bytes

export function PadHistory() {
  const file = useStore(entered, (s) => s.history);
  const request = useMemo(() => (file ? { command: 'history', history: file } : null), [file]);
  const got = useAnswer('history', request);
  const history = got.answer?.history;
  return (
    <>
      <section class="block" aria-labelledby="history">
        <header class="blockhead"><h2 id="history">History</h2><span class="help">The command line keeps it (<code>holdback history add</code>); here its table is looked at.</span></header>
        <FileDrop label="Open a history (CSV)" accept=".csv,.txt" most={mostHistory} onFile={(name, bytes) => entered.set({ history: { name, text: anyText(bytes).text } })}>
          <span class="help">as <code>holdback history show stands.db "Slitter 2" --csv</code> writes it</span>
        </FileDrop>
        {file ? <p><strong>{file.name}</strong> <button type="button" class="quiet" onClick={() => entered.set({ history: null })}>Take it away</button></p> : null}
        <Problems answer={got.answer} />
        {got.fault ? <p class="trouble error" role="alert">No answer: {got.fault}.</p> : null}
      </section>
      {history ? <div class={got.behind ? 'stale' : ''} aria-busy={got.behind} id="kept"><Kept history={history} /></div> : null}
    </>
  );
}

function Kept({ history }: { history: any }) {
  const units = useApped((s) => s.units);
  const { forecast } = history;
  return (
    <>
      <section class="verdict" aria-labelledby="next-change">
        <div>
          <h2 id="next-change">Next change of pads{history.stand ? `, ${history.stand}` : ''}</h2>
          <p class="big" role="status">{!forecast ? 'Not to be told yet' : forecast.beyond_calendar ? 'Beyond all dates' : <data data-test="due" value={forecast.date.middle}>{forecast.date.middle}</data>}</p>
          {forecast ? <p>Between {forecast.date.low} and {forecast.date.high || 'an end that is not to be seen'} with 90 %; {forecast.governs || 'the pads'} first. Measure again by {forecast.measure_by}.</p> : null}
          <Notes notes={history.measure_next} title={forecast ? 'To know it better' : 'What is missing'} />
        </div>
        <dl class="figures">
          <div><dt>entries</dt><dd>{history.entries.length}</dd></div>
          {forecast ? <div><dt>wear counted by</dt><dd>{titleOf(forecast.basis)}</dd></div> : null}
          {history.expected ? <div><dt>life by the stand file</dt><dd><Num value={history.expected.life} kind="running_time" units={units} /></dd></div> : null}
        </dl>
      </section>
      <Mind label="Mind of the history" notes={history.cautions} />
      <Depths history={history} />
      <Pads forecast={forecast} />
      <Entries entries={history.entries} />
      <Assumed notes={history.assumptions} />
    </>
  );
}

const day = 86_400; // [s]
const since = (date: string): number => Date.parse(`${date}T00:00:00Z`) / 1000;

/** Depth that was measured, and the band of the days to come. */
export function depthChart(history: any): ChartData | null {
  const { forecast, courses } = history;
  const points: any[] = (courses ?? []).filter((one: any) => !one.until).flatMap((one: any) => one.points);
  const band = forecast?.band;
  if (points.length === 0 && !band?.day?.length) return null;
  const days: number[] = (band?.day ?? []).map((one: number) => one * day);
  const start = Math.min(...points.map((one) => since(one.date)), ...days);
  const xs = days.map((one) => one - start);
  const measured: Series[] = points.length === 0 ? [] : [{ name: 'measured', role: 'main', marks: 'points', at: points.map((one) => since(one.date) - start), values: points.map((one) => one.depth) }];
  const line = (name: string, role: Series['role'], values: number[] | undefined): Series[] => (values?.length ? [{ name, role, values }] : []);
  return {
    title: 'Depth left above the maker’s limit',
    x: { name: `time from ${new Date(start * 1000).toISOString().slice(0, 10)}`, kind: 'calendar_time', values: [0, ...xs, ...measured.flatMap((one) => [...(one.at ?? [])])].sort((a, b) => a - b) },
    y: { name: 'depth', kind: 'short_length' },
    series: [...measured, ...line('expected', 'main', band?.middle), ...line('95 %', 'third', band?.high), ...line('5 %', 'third', band?.low)].map((one) => (one.at ? one : { ...one, at: xs })),
  };
}

function Depths({ history }: { history: any }) {
  const units = useApped((s) => s.units);
  const chart = useMemo(() => depthChart(history), [history]);
  return chart ? <div class="charts"><Chart data={chart} units={units} /></div> : null;
}

function Pads({ forecast }: { forecast: any }) {
  const units = useApped((s) => s.units);
  if (!forecast?.pads?.length) return null;
  return (
    <Section title="Pad by pad" id="pads">
      <Scroll label="pads in use">
        <table class="plain">
          <thead><tr><th scope="col">pad</th><th scope="col">depths measured</th><th scope="col">left now</th><th scope="col">worn first with</th></tr></thead>
          <tbody>
            {forecast.pads.map((one: any) => (
              <tr key={one.pad}><th scope="row">{one.pad || 'all'}</th><td>{one.measured}</td><td><Num value={one.depth_now} kind="short_length" units={units} /></td><td>{show(one.first, 'ratio', units)}</td></tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

const amounts: [string, string][] = [
  ['depth', 'short_length'], ['thickness', 'short_length'], ['energy', 'energy'], ['running_time', 'running_time'], ['rolls', 'count'], ['tension', 'force'], ['pressure', 'pressure'], ['diameter', 'short_length'],
  ['speed', 'speed'], ['temperature', 'temperature'], ['pairs', 'count'], ['torque_per_pressure', 'torque_per_pressure'], ['threshold', 'pressure'], ['drag', 'torque'], ['friction', 'number'],
];

export function entryWords(entry: any, units: Units): string {
  const told = amounts.filter(([key]) => typeof entry[key] === 'number').map(([key, kind]) => `${titleOf(key)} ${show(entry[key], kind, units)}`);
  const pad = [entry.brake ? `brake ${entry.brake}` : '', entry.pair ? `pair ${entry.pair}` : '', entry.hottest ? 'the hottest' : ''].filter(Boolean).join(', ');
  return [pad, ...told, entry.reason, entry.grade ? `grade ${entry.grade}` : '', entry.text].filter(Boolean).join('; ');
}

function Entries({ entries }: { entries: any[] }) {
  const units = useApped((s) => s.units);
  return (
    <Section title="Entries" id="entries">
      <Scroll label="entries of the history" tall>
        <table class="plain">
          <thead><tr><th scope="col">date</th><th scope="col">what</th><th scope="col">values</th></tr></thead>
          <tbody>{[...entries].reverse().slice(0, 300).map((one) => <tr key={one.number} class={one.corrected_by ? 'corrected' : ''}><th scope="row">{one.date}</th><td>{titleOf(one.kind)}{one.corrected_by ? `, corrected by ${one.corrected_by}` : ''}</td><td>{entryWords(one, units)}</td></tr>)}</tbody>
        </table>
      </Scroll>
    </Section>
  );
}
