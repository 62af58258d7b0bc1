// The tension that readings speak of: how sure it is, what makes it unsure, and how it lies in the window.
import { Chart, type ChartData } from '../chart/Chart';
import { sentence } from '../choose/words';
import { titleOf } from '../schema/fields';
import { useApped } from '../ui/context';
import { Facts, Mark, Num, Scroll, Section, type LimitState } from '../ui/parts';
import { noteText, show, type Amount, type Units } from '../units';
import { Assumed, Mind } from './parts';

const stateOf: Record<string, LimitState> = { inside: 'holds', 'may be outside': 'tight', outside: 'fails' };

/** A probability whose ends are no numbers to be read. */
const likely = (p: number): string => (p < 0.001 ? 'less than 0.1 %' : p > 0.999 ? 'more than 99.9 %' : `${(100 * p).toFixed(1)} %`);

/** A standard uncertainty has no zero point, as a temperature has. */
const uncertain = ({ value, kind }: Amount, units: Units): string => `±\u00a0${show(value, kind === 'temperature' ? 'temperature_difference' : kind, units)}`;

export function Measured({ measured }: { measured: any }) {
  const units = useApped((s) => s.units);
  if (measured.tension === undefined) return null;
  const { window: target } = measured;
  const said = new Set((measured.instruction?.cautions ?? []).map((one: any) => one.text)); // above, while measuring
  const state = target ? stateOf[target.state] ?? 'tight' : null;
  return (
    <>
      <section class="verdict" aria-labelledby="tension-found">
        <div>
          <h2 id="tension-found">Tension of the web</h2>
          {measured.by_draws ? (
            <p class="big" role="status"><Num value={measured.tension} kind="force" units={units} />, <Num value={measured.low} kind="force" units={units} /> to <Num value={measured.high} kind="force" units={units} /></p>
          ) : (
            <p class="big" role="status"><Num value={measured.tension} kind="force" units={units} /> ± <data class="num" data-test="expanded" value={String(measured.expanded)}>{show(measured.expanded, 'force', units)}</data></p>
          )}
          <p class="help">95 % of all such measurements lie within; {measured.freedom === undefined ? 'the spread is known' : `${Math.floor(measured.freedom)} effective degrees of freedom`}, factor {Number(measured.coverage).toFixed(2)}.</p>
          {target && state ? <p class={`windowstate ${state}`}><Mark state={state} /> {sentence(noteText(target.verdict, units))}</p> : null}
        </div>
        <dl class="figures">
          {measured.per_width === undefined ? null : <div><dt>per width</dt><dd><Num value={measured.per_width} kind="tension_per_width" units={units} /></dd></div>}
          <div><dt>standard uncertainty</dt><dd><Num value={measured.uncertainty} kind="force" units={units} /></dd></div>
          {target ? <div><dt>inside the window with</dt><dd><data class="num" value={String(target.probability)}>{likely(target.probability)}</data></dd></div> : null}
          {target ? <div><dt>window of {target.job}</dt><dd>{show(target.low, 'force', units)} to {show(target.high, 'force', units)}</dd></div> : null}
        </dl>
      </section>
      <Mind label="Mind of the answer" notes={measured.cautions.filter((one: any) => !said.has(one.text))} />
      <Budget measured={measured} />
      {measured.sound ? <Sound sound={measured.sound} /> : null}
      <Assumed notes={measured.assumptions} />
    </>
  );
}

function Budget({ measured }: { measured: any }) {
  const units = useApped((s) => s.units);
  const { simple, better, drawn } = measured;
  return (
    <Section title="What makes it unsure" id="budget">
      <Scroll label="uncertainty budget">
        <table class="plain">
          <thead><tr><th scope="col">input</th><th scope="col">value</th><th scope="col">known to</th><th scope="col">makes of the tension</th><th scope="col">share</th><th scope="col">from</th></tr></thead>
          <tbody>
            {measured.budget.map((one: any) => (
              <tr key={one.key}>
                <th scope="row">{titleOf(one.key)}{one.readings > 1 ? <span class="help"> {one.readings} readings</span> : null}</th>
                <td><Num value={one.value.value} kind={one.value.kind} units={units} /></td>
                <td>{uncertain(one.uncertainty, units)}</td>
                <td>±{'\u00a0'}<Num value={one.contribution} kind="force" units={units} /></td>
                <td class="oneline"><Share share={one.share} /> <Num value={one.share} kind="ratio" units={units} /></td>
                <td>{noteText(one.origin, units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {better ? <p><strong>To know it better:</strong> {sentence(noteText(better.what, units))} The standard uncertainty is {show(better.uncertainty, 'force', units)} then.</p> : null}
      {simple ? <p><strong>The usual short cut</strong>, {simple.formula}, gives {show(simple.tension, 'force', units)}: {show(Math.abs(simple.error), 'force', units)} {simple.error >= 0 ? 'too high' : 'too low'} ({show(Math.abs(simple.error_share), 'ratio', units)}).</p> : null}
      {drawn ? <p class="help">Checked by {drawn.draws} draws, {drawn.points}: 95 % lie from {show(drawn.low, 'force', units)} to {show(drawn.high, 'force', units)}; {drawn.agrees ? 'the plain reckoning is as good' : 'the plain reckoning is off, trust these ends'}.</p> : null}
      {measured.parts.length > 0 ? <Facts rows={measured.parts.map((one: any) => [one.name, <>{show(one.value.value, one.value.kind, units)} {uncertain(one.uncertainty, units)}</>])} /> : null}
    </Section>
  );
}

export const Share = ({ share }: { share: number }) => (
  <svg class="bar" viewBox="0 0 100 10" width="80" height="8" aria-hidden="true"><rect class="barback" width="100" height="10" /><rect class="barfront" width={Math.max(0, Math.min(1, share)) * 100} height="10" /></svg>
);

function Sound({ sound }: { sound: any }) {
  const units = useApped((s) => s.units);
  const chart: ChartData = {
    title: 'Peaks of the recording',
    x: { name: 'frequency', kind: 'frequency', values: sound.peaks.map((one: any) => one.frequency) },
    y: { name: 'level', kind: 'ratio' },
    series: [{ name: 'peaks', role: 'main', marks: 'stems', values: sound.peaks.map((one: any) => one.level) }],
  };
  return (
    <Section title="What the recording says" id="sound">
      <Facts rows={[
        ['frequency of the span', <><Num value={sound.frequency} kind="frequency" units={units} /> ± {show(sound.uncertainty, 'frequency', units)}</>],
        ['used', show(sound.duration, 'duration', units)],
        ['sampled at', show(sound.rate, 'frequency', units)],
      ]} />
      {sound.peaks.length > 0 ? <div class="charts"><Chart data={chart} units={units} /></div> : null}
    </Section>
  );
}
