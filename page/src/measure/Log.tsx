// A log of the line: how the tension kept its window, what shakes it, and what is likely wrong.
import { useMemo } from 'preact/hooks';
import { Chart, type ChartData, type Series } from '../chart/Chart';
import { sentence } from '../choose/words';
import { troublesAt } from '../describe/problems';
import { titleOf } from '../schema/fields';
import { useStore } from '../store/signal';
import { useApp, useApped } from '../ui/context';
import { Facts, Mark, Num, Scroll, Section, StateWord } from '../ui/parts';
import { useJob } from '../ui/stand';
import { noteText, readable, show } from '../units';
import { entered } from './entered';
import { Share } from './Measured';
import { anyText, Assumed, FileDrop, JobPicker, Mind, Notes, Problems, TypedInput } from './parts';
import { useAnswer } from './useAnswer';

export const mostLog = 60_000_000; // bytes: text, request and rows all stand in memory

export function Log() {
  const app = useApp();
  const log = useStore(entered, (s) => s.log);
  const { columns, rate, from, to } = useStore(entered, (s) => s);
  const job = useJob();
  const request = useMemo(() => {
    const asked = Object.entries({ columns, rate, from, to, job }).filter(([, text]) => text.trim() !== '');
    return log ? { command: 'diagnose', log, ...Object.fromEntries(asked) } : null;
  }, [log, columns, rate, from, to, job]);
  const got = useAnswer('diagnose', request, true);
  const found = got.answer?.diagnosis;
  const take = (name: string, bytes: Uint8Array) => {
    const { text, old } = anyText(bytes);
    if (old) app.tell(`${name} is no UTF-8; it is read as Windows-1252, as older loggers write.`);
    entered.set({ log: { name, text } });
  };
  return (
    <>
      <section class="block" aria-labelledby="log">
        <header class="blockhead"><h2 id="log">Log</h2><span class="help">A CSV with time, tension and speed; pressure, diameter or turns, temperature and pairs say more. Columns are found by their names.</span></header>
        <div class="measurehead">
          <JobPicker />
          <FileDrop label="Open a log (CSV)" accept=".csv,.tsv,.txt,.log" most={mostLog} onFile={take}>
            <span class="help">At most {mostLog / 1e6} MB on the page; <code>holdback diagnose</code> reads any length.</span>
          </FileDrop>
        </div>
        {log ? (
          <div class="fields">
            <div class="field"><span class="label">read</span><strong>{log.name}</strong> <button type="button" class="quiet" onClick={() => entered.set({ log: null })}>Take it away</button></div>
            {options.map((one) => <OptionInput key={one.key} option={one} answer={got.answer} />)}
          </div>
        ) : null}
        <Problems answer={got.answer} except={log ? optionFields : []} />
        {got.fault ? <p class="trouble error" role="alert">No answer: {got.fault}.</p> : null}
        {request && !got.answer && !got.fault ? <p class="looking" role="status">The core reads the log…</p> : null}
      </section>
      {found ? <div class={got.behind ? 'stale' : ''} aria-busy={got.behind} id="diagnosed"><Diagnosed found={found} /></div> : null}
    </>
  );
}

interface Option {
  key: 'columns' | 'rate' | 'from' | 'to';
  name: string;
  example: string;
  help: string;
}
const options: readonly Option[] = [
  { key: 'columns', name: 'columns', example: 'time=t [s], tension=F1 [N]', help: 'that the header does not tell' },
  { key: 'rate', name: 'rows a second', example: '100 Hz', help: 'of a log without times, or with coarse ones' },
  { key: 'from', name: 'from', example: '10 min', help: 'only what comes later in the log' },
  { key: 'to', name: 'to', example: '2 h', help: 'only up to this time of the log' },
];
/** The core names them as the command line does. */
const fieldOf = (option: Option): string => `--${option.key}`;
const optionFields = options.map(fieldOf);

function OptionInput({ option, answer }: { option: Option; answer: any }) {
  const units = useApped((s) => s.units);
  const value = useStore(entered, (s) => s[option.key]);
  return (
    <TypedInput
      id={`log-${option.key}`} label={option.name} value={value} placeholder={option.example} help={sentence(option.help)}
      troubles={troublesAt(answer, fieldOf(option), units)} onType={(text) => entered.set({ [option.key]: text })}
    />
  );
}

function Diagnosed({ found }: { found: any }) {
  const units = useApped((s) => s.units);
  return (
    <>
      <section class="verdict" aria-labelledby="diagnosis">
        <div>
          <h2 id="diagnosis">What the log says</h2>
          <p class="big" role="status">{found.verdict ? sentence(noteText(found.verdict, units)) : found.title}</p>
          {found.state ? <p><StateWord state={found.state} /> against the window of {found.job}, {show(found.tension?.low, 'force', units)} to {show(found.tension?.high, 'force', units)}.</p> : null}
        </div>
      </section>
      <Mind label="Mind of the log" notes={found.cautions} />
      <Causes causes={found.causes} />
      <Phases found={found} />
      <LogCharts found={found} />
      <Peaks peaks={found.peaks} />
      <Changes changes={found.changes} />
      <Read found={found} />
      <Assumed notes={found.assumptions} />
    </>
  );
}

function Causes({ causes }: { causes: any[] | undefined }) {
  const units = useApped((s) => s.units);
  if (!causes?.length) return null;
  return (
    <Section title="Likely causes" id="causes">
      <ol class="causes">
        {causes.map((one, i) => (
          <li key={i}>
            <h3>{sentence(noteText(one.what, units))}<span class="share"><Share share={one.confidence} /> <Num value={one.confidence} kind="ratio" units={units} /></span></h3>
            <Notes notes={one.evidence} />
            {one.to_try?.length ? <><p class="help">To try:</p><Notes notes={one.to_try} /></> : null}
            {one.to_tell_apart?.text ? <p class="help">To tell it apart: {sentence(noteText(one.to_tell_apart, units))}</p> : null}
          </li>
        ))}
      </ol>
    </Section>
  );
}

function Phases({ found }: { found: any }) {
  const units = useApped((s) => s.units);
  if (!found.phases?.length) return null;
  return (
    <Section title="Tension by phase" id="phases">
      <Scroll label="tension by phase of the line">
        <table class="plain">
          <thead><tr><th scope="col">phase</th><th scope="col">time</th><th scope="col">inside the window</th><th scope="col">below</th><th scope="col">above</th><th scope="col">mean</th><th scope="col">deviation</th><th scope="col">lowest to highest</th></tr></thead>
          <tbody>
            {found.phases.map((one: any) => (
              <tr key={one.phase}>
                <th scope="row">{titleOf(one.phase)}</th>
                <td>{show(one.time, timeKind(one.time), units)}</td>
                <td><Num value={one.inside} kind="ratio" units={units} /></td>
                <td>{show(one.below, 'ratio', units)}</td>
                <td>{show(one.above, 'ratio', units)}</td>
                <td><Num value={one.mean} kind="force" units={units} /></td>
                <td>{show(one.deviation, 'force', units)}</td>
                <td>{show(one.lowest, 'force', units)} to {show(one.highest, 'force', units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

type Column = (number | null)[];
/** Hours where seconds would have too many digits. */
const timeKind = (seconds: number): string => (seconds > 7200 ? 'running_time' : 'duration');
const column = (list: unknown): Column => (Array.isArray(list) ? list.map((one) => (typeof one === 'number' ? one : null)) : []);

function spectrumChart(title: string, spectrum: any, kind: string, name: string): ChartData | null {
  if (!spectrum?.place?.length) return null;
  return {
    title, x: { name, kind, values: spectrum.place }, y: { name: 'amplitude of the tension', kind: 'force' },
    series: [{ name: 'tension', role: 'main', values: column(spectrum.amplitude) }, ...(spectrum.floor?.length ? [{ name: 'noise', role: 'second' as const, values: column(spectrum.floor) }] : [])],
  };
}

export function logCharts(found: any): ChartData[] {
  const trace: any[] = found.trace ?? [];
  const traced = (key: string): Column => column(trace.map((each) => each[key]));
  const times: number[] = trace.map((each) => each.time);
  const over = { name: 'time', kind: timeKind(times.at(-1) ?? 0), values: times };
  const one = (title: string, y: { name: string; kind: string }, series: (Series | null)[]): ChartData | null => {
    const there = series.filter((each): each is Series => each !== null && each.values.some((value) => value !== null));
    return over.values.length > 1 && there.length > 0 ? { title, x: over, y, series: there } : null;
  };
  const flat = (value: unknown, name: string, side: 'above' | 'below'): Series | null => (typeof value === 'number' ? { name, role: 'limit', side, values: over.values.map(() => value) } : null);
  const friction = found.friction;
  return [
    one('Tension', { name: 'tension', kind: 'force' }, [
      { name: 'mean', role: 'main', values: traced('tension') }, { name: 'highest', role: 'third', values: traced('highest_tension') }, { name: 'lowest', role: 'fourth', values: traced('lowest_tension') },
      flat(found.tension?.high, 'upper bound', 'above'), flat(found.tension?.low, 'lower bound', 'below'),
    ]),
    spectrumChart('Spectrum over frequency', found.by_frequency, 'frequency', 'frequency'),
    spectrumChart('Spectrum over orders of the roll', found.by_order, 'number', 'order of the roll'),
    one('Speed', { name: 'speed', kind: 'speed' }, [{ name: 'web', role: 'main', values: traced('speed') }]),
    one('Pressure', { name: 'pressure', kind: 'pressure' }, [{ name: 'at the brake', role: 'main', values: traced('pressure') }]),
    one('Diameter', { name: 'diameter', kind: 'short_length' }, [{ name: 'roll', role: 'main', values: traced('diameter') }]),
    friction?.time?.length > 1 ? { title: 'Friction over nominal', x: { name: 'time', kind: timeKind(friction.time.at(-1)), values: friction.time }, y: { name: 'ratio', kind: 'ratio' }, series: [{ name: 'effective', role: 'main', marks: 'points', values: column(friction.ratio) }] } satisfies ChartData : null,
  ].filter((each): each is ChartData => each !== null);
}

function LogCharts({ found }: { found: any }) {
  const units = useApped((s) => s.units);
  const charts = useMemo(() => logCharts(found), [found]);
  return charts.length === 0 ? null : <div class="charts">{charts.map((one) => <Chart key={one.title} data={one} units={units} />)}</div>;
}

function Peaks({ peaks }: { peaks: any[] | undefined }) {
  const units = useApped((s) => s.units);
  if (!peaks?.length) return null;
  return (
    <Section title="What shakes the tension" id="peaks">
      <Scroll label="peaks of the spectra">
        <table class="plain">
          <thead><tr><th scope="col">frequency</th><th scope="col">order</th><th scope="col">amplitude</th><th scope="col">of the setpoint</th><th scope="col">source</th><th scope="col">confidence</th><th scope="col">why</th></tr></thead>
          <tbody>
            {peaks.slice(0, 15).map((one, i) => (
              <tr key={i}>
                <td>{one.frequency > 0 ? <Num value={one.frequency} kind="frequency" units={units} /> : ''}</td>
                <td>{one.order > 0 ? readable(one.order) : ''}</td>
                <td><Num value={one.amplitude} kind="force" units={units} /></td>
                <td>{show(one.share, 'ratio', units)}</td>
                <th scope="row">{titleOf(one.source)}{one.idler ? ` ${one.idler}` : ''}{one.harmonic > 1 ? `, ${one.harmonic} ×` : ''}</th>
                <td>{show(one.confidence, 'ratio', units)}</td>
                <td>{one.why?.text ? sentence(noteText(one.why, units)) : ''}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

function Changes({ changes }: { changes: any[] | undefined }) {
  const units = useApped((s) => s.units);
  if (!changes?.length) return null;
  return (
    <Section title="Stops and ramps" id="changes">
      <Scroll label="stops and ramps" tall>
        <table class="plain">
          <thead><tr><th scope="col">what</th><th scope="col">at</th><th scope="col">speed</th><th scope="col">tension</th><th scope="col">verdict</th></tr></thead>
          <tbody>
            {changes.slice(0, 100).map((one, i) => (
              <tr key={i}>
                <th scope="row"><Mark state={one.state} /> {titleOf(one.phase)}</th>
                <td>{show(one.begin, timeKind(one.begin), units)}</td>
                <td>{show(one.from_speed, 'speed', units)} to {show(one.to_speed, 'speed', units)}</td>
                <td>{show(one.lowest_tension, 'force', units)} to {show(one.highest_tension, 'force', units)}</td>
                <td>{one.verdict?.text ? sentence(noteText(one.verdict, units)) : one.state}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

function Read({ found }: { found: any }) {
  const units = useApped((s) => s.units);
  const { reading } = found;
  if (!reading) return null;
  return (
    <Section title="How the log was read" id="log-read">
      <Facts rows={[
        ['rows', readable(reading.rows, 1)], ['lines of the file', readable(reading.lines, 1)], ['span', show(reading.span, timeKind(reading.span), units)],
        ['from row to row', show(reading.interval, 'duration', units)], ['gaps', readable(found.gaps ?? 0, 1)], ['diameter', titleOf(found.diameter_source ?? 'unknown')],
      ]} />
      {reading.left_out?.length ? <ul class="notes">{reading.left_out.map((one: any) => <li key={one.why}>{readable(one.rows, 1)} rows left out: {one.why} (first in line {readable(one.first_line, 1)}).</li>)}</ul> : null}
      <Notes notes={reading.assumptions} />
    </Section>
  );
}
