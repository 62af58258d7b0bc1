// The choice on one page: what, why, each job's least margin, what falls out, what to mind.
import { fitWords, limitName, sentence } from '../choose/words';
import { useApped } from '../ui/context';
import { Margin, Num } from '../ui/parts';
import { noteText } from '../units';
import { PaperFoot } from './PaperFoot';

const most = 30; // jobs that a page has room for

export function Summary({ choice }: { choice: any }) {
  const units = useApped((s) => s.units);
  const best = choice.recommended;
  const jobs: any[] = best.jobs.length <= most ? best.jobs : [...best.jobs].sort((a, b) => a.margin - a.limits[0]?.reserve - (b.margin - b.limits[0]?.reserve)).slice(0, most);
  return (
    <article class="paper" aria-label="Summary of the choice">
      <header>
        <p class="paperkind">Summary of the choice</p>
        <h2>{choice.title}</h2>
      </header>
      <p class="big">{fitWords(best.fit)}</p>
      <p>{sentence(noteText(choice.why, units))}</p>
      <dl class="papergrid">
        <div><dt>jobs covered</dt><dd>{best.covered} of {best.jobs.length}</dd></div>
        <div><dt>of these tight</dt><dd>{best.tight}</dd></div>
        <div><dt>fits compared</dt><dd>{choice.fits_tried}</dd></div>
        <div><dt>pads a year</dt><dd><Num value={best.pads_per_year} kind="number" units={units} /></dd></div>
        {best.price !== undefined ? <div><dt>brakes, {choice.currency}</dt><dd><Num value={best.price} kind="price" units={units} /></dd></div> : null}
        {choice.likelihood ? <div><dt>all covered jobs hold</dt><dd><Num value={choice.likelihood.probability} kind="ratio" units={units} /></dd></div> : null}
      </dl>
      <h3>{jobs.length < best.jobs.length ? `The ${most} jobs with least in hand` : 'Jobs'}</h3>
      <div class="papercolumns">
        <table class="plain tightrows">
          <thead><tr><th scope="col">job</th><th scope="col">pairs</th><th scope="col">in hand</th><th scope="col">binding limit</th><th scope="col">full roll</th><th scope="col">hottest disc</th></tr></thead>
          <tbody>
            {jobs.map((one) => (
              <tr key={one.job}>
                <th scope="row">{one.job}</th><td>{one.pairs}</td><td><Margin margin={one.margin} state={one.state} /></td><td>{limitName(one.binding)}</td>
                <td><Num value={one.pressure_full} kind="pressure" units={units} /></td><td><Num value={one.hottest} kind="temperature" units={units} /></td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {choice.uncovered.length > 0 ? (
        <><h3>What falls out</h3><ul class="notes">{choice.uncovered.slice(0, 5).map((one: any) => <li key={one.job}><strong>{one.job}</strong>: {noteText(one.why, units)}. {one.remedies[0] ? `Would come in: ${noteText(one.remedies[0].what, units)}.` : 'No change that was tried brings it in.'}</li>)}</ul></>
      ) : null}
      <h3>Mind</h3>
      <ul class="notes">{choice.cautions.slice(0, 4).map((one: any, i: number) => <li key={i}>{noteText(one, units)}</li>)}</ul>
      <PaperFoot />
    </article>
  );
}
