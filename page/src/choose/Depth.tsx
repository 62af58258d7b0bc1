// One job on the recommended fit: limits, roll, stops, torque, temperatures, pressures, likelihood.
import { useApped } from '../ui/context';
import { Facts, Looking, Margin, Num, Scroll, Section, StateWord } from '../ui/parts';
import { noteText, show } from '../units';
import { Charts } from './Charts';
import { Likelihood } from './Likelihood';
import { caseWords, fitWords, knownWords, limitName } from './words';

export function Depth({ job, envelope, plan, fit, brief }: { job: any; envelope: any; plan: any; fit: any; brief: boolean }) {
  const units = useApped((s) => s.units);
  return (
    <Section title={`In depth: ${job.job}`} id="depth" aside={<StateWord state={job.state} />}>
      <p class="help">On {fitWords(fit)}; {job.pairs} pad pair{job.pairs === 1 ? '' : 's'} engaged on each brake. Binding: {limitName(job.binding)}. Choose another job in the table above.</p>
      <Facts
        rows={[
          ['tension', <><Num value={job.tension.setpoint} kind="force" units={units} /> ({show(job.tension.low, 'force', units)} to {show(job.tension.high, 'force', units)})</>],
          ['pressure, full roll', <Num value={job.pressure_full} kind="pressure" units={units} />],
          ['pressure, core', <Num value={job.pressure_core} kind="pressure" units={units} />],
          ['slip power, most', <Num value={job.slip_power} kind="power" units={units} />],
          ['hottest disc', <><Num value={job.hottest} kind="temperature" units={units} /> at Ø {show(job.hottest_diameter, 'short_length', units)}</>],
          ['pad life', <Num value={job.wear.life} kind="running_time" units={units} />],
          ['web on the roll', <Num value={job.roll.length} kind="web_length" units={units} />],
          ['roll, full', <Num value={job.roll.mass} kind="mass" units={units} />],
        ]}
      />
      <Stops job={job} />
      {job.limits.length > 0 ? <Limits limits={job.limits} /> : <p><Looking what="limits being worked out" /></p>}
      <Charts job={job} envelope={envelope} plan={plan} />
      {brief ? <div class="likelihood"><h3>How likely it holds</h3><p><Looking what="being sampled" /></p></div> : <Likelihood likelihood={job.likelihood} />}
      {job.notes.length > 0 ? <ul class="notes">{job.notes.map((one: any, i: number) => <li key={i}>{noteText(one, units)}</li>)}</ul> : null}
    </Section>
  );
}

function Limits({ limits }: { limits: any[] }) {
  const units = useApped((s) => s.units);
  const sorted = [...limits].sort((a, b) => a.margin - a.reserve - (b.margin - b.reserve));
  return (
    <Scroll label="limits of this job">
      <table class="plain limits">
        <caption>Limits, the least in hand first</caption>
        <thead><tr><th scope="col">limit</th><th scope="col">in hand</th><th scope="col">value</th><th scope="col">bound</th><th scope="col">where it binds</th><th scope="col">bound known by</th></tr></thead>
        <tbody>
          {sorted.map((one, i) => (
            <tr key={`${one.key}-${i}`}>
              <th scope="row">{one.name}</th>
              <td><Margin margin={one.margin} state={one.state} /></td>
              <td><Num value={one.value} kind={one.kind} units={units} /></td>
              <td><Num value={one.bound} kind={one.kind} units={units} /></td>
              <td>{caseWords(one.case)}{one.diameter > 0 ? ` at Ø ${show(one.diameter, 'short_length', units)}` : ''}</td>
              <td>{knownWords[one.known] ?? one.known}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Stops({ job }: { job: any }) {
  const units = useApped((s) => s.units);
  const row = (name: string, stop: any) => (
    <tr>
      <th scope="row">{name}</th>
      <td><Num value={stop.time} kind="duration" units={units} /></td>
      <td><Num value={stop.torque_needed} kind="torque" units={units} /></td>
      <td><Num value={stop.torque_available} kind="torque" units={units} /></td>
      <td>{stop.runs_away ? 'nothing stops the roll' : stop.slack > 0 ? <><Num value={stop.slack} kind={stop.slack < 10 ? 'short_length' : 'web_length'} units={units} /> at Ø {show(stop.slack_diameter, 'short_length', units)}</> : 'none'}</td>
      <td>{stop.never ? 'never' : <Num value={stop.shortest_stop} kind="duration" units={units} />}</td>
    </tr>
  );
  return (
    <Scroll label="stops of this job">
      <table class="plain">
        <caption>Stops, at the diameter where each is hardest</caption>
        <thead><tr><th scope="col">stop</th><th scope="col">in</th><th scope="col">torque needed</th><th scope="col">at least there</th><th scope="col">slack thrown</th><th scope="col">shortest with tension kept</th></tr></thead>
        <tbody>{row('normal', job.stop)}{row('emergency', job.emergency_stop)}</tbody>
      </table>
    </Scroll>
  );
}
