// The card that hangs at the machine: pairs, pressures by diameter, what to expect.
import { fitWords, limitName, sentence } from '../choose/words';
import { useApped } from '../ui/context';
import { Num, StateWord } from '../ui/parts';
import { noteText, show } from '../units';
import { PaperFoot } from './PaperFoot';

export function SetupCard({ plan, job, check }: { plan: any; job: any; check: any }) {
  const units = useApped((s) => s.units);
  const some = thinned<any>(job.automatic, 9);
  return (
    <article class="paper" aria-label={`Set-up card of ${job.job}`}>
      <header>
        <p class="paperkind">Set-up card</p>
        <h2>{job.job}</h2>
        <p>{plan.title}</p>
      </header>
      {job.state === 'fails' ? <p class="paperstop">✕ Do not run from this card: {limitName(job.binding)} fails on this fit.</p> : null}
      <dl class="papergrid">
        <div><dt>brakes</dt><dd>{fitWords(job.fit)}</dd></div>
        <div><dt>pad pairs to engage on each</dt><dd class="large">{job.pairs}</dd></div>
        <div><dt>tension</dt><dd class="large"><Num value={job.tension.setpoint} kind="force" units={units} /></dd></div>
        <div><dt>tension window</dt><dd>{show(job.tension.low, 'force', units)} to {show(job.tension.high, 'force', units)}</dd></div>
        <div><dt>state</dt><dd><StateWord state={job.state} /></dd></div>
        {check ? <div><dt>disc gets to</dt><dd><Num value={check.hottest} kind="temperature" units={units} /></dd></div> : null}
      </dl>
      <h3>By hand, within ± {show(job.tolerance, 'ratio', units)}</h3>
      {job.by_hand.length > 0 ? (
        <table class="plain">
          <thead><tr><th scope="col">from diameter</th><th scope="col">down to</th><th scope="col">set</th><th scope="col">tension to expect</th></tr></thead>
          <tbody>
            {job.by_hand.map((one: any, i: number) => (
              <tr key={i}>
                <td><Num value={one.from} kind="short_length" units={units} /></td>
                <td><Num value={one.to} kind="short_length" units={units} /></td>
                <td class="large"><Num value={one.pressure} kind="pressure" units={units} /></td>
                <td>{show(one.tension_from, 'force', units)} to {show(one.tension_to, 'force', units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : <p>No setting by hand keeps this tolerance.</p>}
      <h3>For a control that knows the diameter</h3>
      <table class="plain across">
        <tbody>
          <tr><th scope="row">diameter</th>{some.map((one, i) => <td key={i}><Num value={one.diameter} kind="short_length" units={units} /></td>)}</tr>
          <tr><th scope="row">pressure</th>{some.map((one, i) => <td key={i}><Num value={one.pressure} kind="pressure" units={units} /></td>)}</tr>
        </tbody>
      </table>
      {[...job.notes, ...plan.cautions].length > 0 ? <><h3>Mind</h3><ul class="notes">{[...job.notes, ...plan.cautions].map((one: any, i: number) => <li key={i}>{sentence(noteText(one, units))}</li>)}</ul></> : null}
      <PaperFoot />
    </article>
  );
}

/** First, last and some between: a card has room for few. */
export function thinned<T>(list: readonly T[], most: number): T[] {
  if (list.length <= most) return [...list];
  return Array.from({ length: most }, (_, i) => list[Math.round((i * (list.length - 1)) / (most - 1))]!);
}
