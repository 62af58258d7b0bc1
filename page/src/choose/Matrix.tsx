// Jobs × fits: what each has in hand, and which limit binds.
import { useState } from 'preact/hooks';
import { useApp } from '../ui/context';
import { Margin, Pages, Scroll, Section, StateWord } from '../ui/parts';
import { useJob } from '../ui/stand';
import { fitKey, limitName } from './words';

const fitsAtFirst = 9;
const rowsAtOnce = 40;

export function Matrix({ choice }: { choice: any }) {
  const app = useApp();
  const chosen = useJob();
  const [wide, setWide] = useState(false);
  const [asked, setPage] = useState(0);
  const fits: any[] = wide ? choice.all : choice.all.slice(0, fitsAtFirst);
  const jobs: string[] = choice.recommended.jobs.map((one: any) => one.job);
  const page = Math.min(asked, Math.floor(Math.max(0, jobs.length - 1) / rowsAtOnce));
  const from = page * rowsAtOnce;
  const legend = <p class="legend"><StateWord state="holds" /><StateWord state="tight" /><StateWord state="fails" /><span>In a cell: what the job has in hand, and the limit that binds.</span></p>;
  return (
    <Section title="The mix on every fit" id="matrix" aside={legend}>
      <Scroll label="margins of jobs on fits">
        <table class="matrix">
          <thead>
            <tr>
              <th scope="col">job</th>
              {fits.map((one, i) => (
                <th key={fitKey(one.fit)} scope="col" class={i === 0 ? 'best' : ''}>
                  <span class="fitname">{one.fit.brakes} × {one.fit.brake}</span>
                  <span class="fitmore">{one.fit.grade}{i === 0 ? ', recommended' : ''}</span>
                  <span class="fitmore">covers {one.covered} of {jobs.length}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {jobs.slice(from, from + rowsAtOnce).map((name, i) => (
              <tr key={name} class={name === chosen ? 'chosen' : ''}>
                <th scope="row"><button type="button" aria-pressed={name === chosen} onClick={() => app.choose(name)}>{name}</button></th>
                {fits.map((fit, column) => <Cell key={fitKey(fit.fit)} job={(fit.standings?.length ? fit.standings : fit.jobs)[from + i]} best={column === 0} />)}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <div class="gridtools">
        {choice.all.length > fitsAtFirst ? <button type="button" class="quiet" aria-pressed={wide} onClick={() => setWide(!wide)}>{wide ? `The best ${fitsAtFirst} fits` : `All ${choice.all.length} fits`}</button> : null}
        <Pages page={page} size={rowsAtOnce} count={jobs.length} go={setPage} what="jobs" />
      </div>
    </Section>
  );
}

function Cell({ job, best }: { job: any; best: boolean }) {
  if (!job) return <td class={best ? 'best' : ''} />;
  return (
    <td class={`${job.state}${best ? ' best' : ''}`}>
      <Margin margin={job.margin} state={job.state} />
      <span class="binding">{limitName(job.binding)}</span>
    </td>
  );
}
