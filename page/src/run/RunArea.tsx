/** The demonstration stand: the core moves it, the page shows it. */
import type { RunAreaProps, StandView } from '../contract';
import { Elevation } from '../drawing/Elevation';
import { saveDrawing } from '../drawing/save';
import { show } from '../drawing/quantity';
import { Bar, Choice } from './Bar';
import { Controls } from './Controls';
import { run_csv } from './csv';
import { clock_text } from './events';
import { Readouts, StripTable } from './Readouts';
import './run.css';
import { download, file_name, run_svg } from './save';
import { StripChart } from './StripChart';
import { useRun, type Run } from './useRun';

const windows: { name: string; seconds: number }[] = [
  { name: '20 s', seconds: 20 }, { name: '1 min', seconds: 60 }, { name: '5 min', seconds: 300 }, { name: '30 min', seconds: 1800 }, { name: 'all', seconds: Infinity },
];

function StripTools({ r, stand }: { r: Run; stand: StandView }) {
  const title = `${stand.job}: control by ${r.names.join(' and ')}`;
  return (
    <div class="rn-row rn-striphead">
      <div class="rn-row" role="group" aria-label="Time shown">
        <button type="button" aria-pressed={r.span === undefined} onClick={() => r.setSpan(undefined)}>as the speed</button>
        {windows.map((one) => <button key={one.name} type="button" aria-pressed={r.span === one.seconds} onClick={() => r.setSpan(one.seconds)}>{one.name}</button>)}
      </div>
      <div class="rn-row" role="group" aria-label="Save the run">
        <button type="button" disabled={!r.ready} onClick={() => download(file_name(stand.job, 'csv'), run_csv(r.tracks, stand.units), 'text/csv')}>save CSV</button>
        <button type="button" onClick={() => saveDrawing(stand.job)}>save drawing</button>
        <button type="button" disabled={!r.ready} onClick={() => download(file_name(stand.job, 'svg'), run_svg(r.tracks, r.view(), stand.units, r.log, title), 'image/svg+xml')}>save SVG</button>
      </div>
    </div>
  );
}

function Record({ r, stand }: { r: Run; stand: StandView }) {
  const two = r.names.length > 1;
  return (
    <section class="rn-record" aria-label="Strips">
      <div class={two ? 'rn-charts is-two' : 'rn-charts'}>
        {r.names.map((name, i) => (
          <figure key={i}>
            {two && <figcaption>control by {name}</figcaption>}
            <StripChart name={`control by ${name}`} height={560} onCanvas={r.onCanvas[i]!} />
          </figure>
        ))}
      </div>
      <StripTools r={r} stand={stand} />
      <p class="help">A change of control starts the run anew at standstill.{r.fit ? ` Fit: ${r.fit.brakes} × ${r.fit.brake}, grade ${r.fit.grade}.` : ''}</p>
      <details><summary>Strips as a table</summary>{r.ready && <StripTable tracks={r.tracks} view={r.view()} units={stand.units} />}</details>
    </section>
  );
}

function Log({ r }: { r: Run }) {
  if (r.log.length === 0) return <p class="help">Nothing has happened yet.</p>;
  return (
    <ol class="rn-log" tabIndex={0} aria-label="events, newest first">
      {r.log.slice(-80).reverse().map((one, i) => (
        <li key={r.log.length - i} class={one.loud ? 'is-loud' : ''}><time>{clock_text(one.time)}</time> {one.loud ? '▲ ' : ''}{one.text}</li>
      ))}
    </ol>
  );
}

/** Each on a line of its own, short enough to be read. */
export function Caution({ r, stand }: { r: Pick<Run, 'facts'>; stand: StandView }) {
  const { disc, guard } = r.facts;
  const lines = [
    'A computed stand, not a machine: nothing here moves or stops a real roll.',
    'A brake that needs air lets go when the air fails.',
    'Real rolls are stopped by the machine’s own emergency stop, behind its guards.',
    guard === 'none' ? 'This stand has no guard around its disc.' : '',
    disc?.rated === undefined ? '' : `The disc is rated to ${show(disc.rated, 'temperature', stand.units)}.`,
  ];
  return <ul class="rn-caution">{lines.filter((one) => one !== '').map((one) => <li key={one}>{one}</li>)}</ul>;
}

export function RunArea(props: RunAreaProps) {
  const { stand } = props;
  const r = useRun(props);
  const { shown, facts, job, ready, over } = r;
  return (
    <div class="run">
      <Bar r={r} />
      <Choice r={r} stand={stand} />
      {shown.message.length > 0 && (
        <div class="rn-message" role="alert"><strong>This stand does not run.</strong><ul>{shown.message.map((one) => <li key={one}>{one}</li>)}</ul></div>
      )}
      <p class="unseen" aria-live="polite">{shown.spoken}</p>
      <div class="rn-main">
        <div class="rn-drawing">
          <Elevation stand={stand} brake={r.fit?.brake} control={r.tracks[r.looked]?.control ?? r.control} onMover={r.onMover} />
        </div>
        <div class="rn-side">
          <Controls units={stand.units} state={r.tracks[0]?.state} ready={ready && !over} pairs={facts.disc?.pairs ?? 0} highest={facts.highest ?? 6e5}
            topSpeed={facts.topSpeed ?? job?.speed ?? 10} jobSpeed={job?.speed} hand={r.hand} act={r.act} />
          <section aria-label="Numbers"><h2>Numbers</h2>{ready && <Readouts tracks={r.tracks} units={stand.units} />}</section>
        </div>
        <Record r={r} stand={stand} />
      </div>
      <div class="rn-foot">
        <section aria-label="Log"><h2>Log</h2><Log r={r} /></section>
        <section aria-label="Cautions"><h2>Cautions</h2><Caution r={r} stand={stand} /></section>
      </div>
    </div>
  );
}
