// The mix on every candidate fit; what is recommended and why; what falls out and what would bring it in; one job in depth.
import { useApped } from '../ui/context';
import { Num, Section } from '../ui/parts';
import { useJob } from '../ui/stand';
import { noteText } from '../units';
import { Depth } from './Depth';
import { Matrix } from './Matrix';
import { NoAnswer } from './NoAnswer';
import { counted, fitWords, limitName, sentence } from './words';
import { Uncovered } from './Uncovered';

export function Choose() {
  const size = useApped((s) => s.size);
  const stale = useApped((s) => s.stale);
  const choice = size?.choice;
  if (!choice?.recommended) return <NoAnswer answer={size} what="Choose" />;
  return (
    <div class={stale ? 'answers stale' : 'answers'} aria-busy={stale}>
      <Recommended choice={choice} />
      <Cautions notes={choice.cautions} />
      <Matrix choice={choice} />
      <Uncovered choice={choice} />
      <DepthOf choice={choice} />
      <Assumptions choice={choice} defaults={size.defaults} />
    </div>
  );
}

function Recommended({ choice }: { choice: any }) {
  const units = useApped((s) => s.units);
  const best = choice.recommended;
  const jobs = best.jobs.length;
  return (
    <section class="verdict" aria-labelledby="recommended">
      <div>
        <h2 id="recommended">Recommended fit</h2>
        <p class="big" data-test="recommended">{fitWords(best.fit)}</p>
        <p>{sentence(noteText(choice.why, units))}</p>
        {choice.next ? <p class="help">Next best: {fitWords(choice.next.fit)}, covers {choice.next.covered} of {jobs}, least margin of {limitName(choice.next.worst_limit)}.</p> : null}
      </div>
      <dl class="figures">
        <div><dt>jobs covered</dt><dd><data value={best.covered} data-test="covered">{best.covered}</data> of {jobs}</dd></div>
        <div><dt>of these tight</dt><dd>{best.tight}</dd></div>
        <div><dt>pads a year</dt><dd><Num value={best.pads_per_year} kind="number" units={units} /></dd></div>
        {best.price !== undefined ? <div><dt>brakes, {choice.currency || 'price'}</dt><dd><Num value={best.price} kind="price" units={units} /></dd></div> : null}
        {choice.likelihood ? <div><dt>all covered jobs hold</dt><dd><Num value={choice.likelihood.probability} kind="ratio" units={units} /></dd></div> : null}
        <div><dt>fits compared</dt><dd>{choice.fits_tried}</dd></div>
      </dl>
    </section>
  );
}

export function Cautions({ notes }: { notes: any[] }) {
  const units = useApped((s) => s.units);
  if (!notes?.length) return null;
  return (
    <section class="cautions" aria-labelledby="cautions">
      <h2 id="cautions">Mind</h2>
      <ul>{notes.map((one, i) => <li key={i}>{sentence(noteText(one, units))}</li>)}</ul>
    </section>
  );
}

function DepthOf({ choice }: { choice: any }) {
  const name = useJob();
  const plan = useApped((s) => s.plan);
  const inDepth = choice.job?.job === name ? choice.job : null;
  const job = inDepth ?? choice.recommended.jobs.find((one: any) => one.job === name) ?? choice.recommended.jobs[0];
  if (!job) return null;
  const envelope = choice.envelope?.job === job.job ? choice.envelope : null;
  const planned = plan?.plan?.jobs?.find((one: any) => one.job === job.job) ?? null;
  return <Depth job={job} envelope={envelope} plan={planned} fit={choice.recommended.fit} />;
}

function Assumptions({ choice, defaults }: { choice: any; defaults: any[] }) {
  const units = useApped((s) => s.units);
  return (
    <Section title="What the numbers stand on" id="assumptions">
      <ul class="notes">{choice.assumptions.map((one: any, i: number) => <li key={i}>{sentence(noteText(one, units))}</li>)}</ul>
      <details>
        <summary>{counted(defaults.length, 'value')} not in the file, so taken</summary>
        <ul class="notes two">{defaults.map((one, i) => <li key={i}>{one.field} = {one.text}{one.owner ? ` (${one.owner})` : ''}</li>)}</ul>
      </details>
    </Section>
  );
}
