// The mix on every candidate fit; what is recommended and why; what falls out and what would bring it in; one job in depth.
import { useEffect, useMemo, useState } from 'preact/hooks';
import { useApped } from '../ui/context';
import { isCurrent, planOf } from '../store/app';
import { Looking, Num, Section } from '../ui/parts';
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
  const behind = useApped((s) => !isCurrent(s));
  const choice = size?.choice;
  const late = useLater(size);
  // Each part is drawn anew only for an answer of its own: a keystroke that makes all of it stale costs one class.
  const first = useMemo(() => choice?.recommended && (
    <>
      <Recommended choice={choice} />
      <Cautions notes={choice.cautions} />
      <Matrix choice={choice} />
      <Uncovered choice={choice} />
    </>
  ), [choice]);
  const then = useMemo(() => late?.choice?.recommended && (
    <>
      <DepthOf choice={late.choice} />
      <Assumptions choice={late.choice} defaults={late.defaults} />
    </>
  ), [late]);
  if (!choice?.recommended) return <NoAnswer answer={size} what="Choose" />;
  return (
    <div class={behind ? 'answers stale' : 'answers'} aria-busy={stale}>
      <p class="unseen" role="status">{choice.brief ? 'Margins and recommendation are up to date. Remedies and likelihoods are being worked out.' : ''}</p>
      {first}
      <div class={late !== size ? 'stale' : ''}>{then}</div>
    </div>
  );
}

/** A value one frame later: what stands first on screen is painted before the rest is drawn. */
function useLater<T>(value: T): T {
  const [late, setLate] = useState(value);
  useEffect(() => {
    if (late === value) return undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const frame = requestAnimationFrame(() => (timer = setTimeout(() => setLate(value))));
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
    };
  }, [value]);
  return late;
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
        {choice.brief ? <div><dt>all covered jobs hold</dt><dd><Looking what="being sampled" /></dd></div>
          : choice.likelihood ? <div><dt>all covered jobs hold</dt><dd><Num value={choice.likelihood.probability} kind="ratio" units={units} /></dd></div> : null}
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
  const plan = useApped(planOf);
  const inDepth = choice.job?.job === name ? choice.job : null;
  const job = inDepth ?? choice.recommended.jobs.find((one: any) => one.job === name) ?? choice.recommended.jobs[0];
  if (!job) return null;
  const envelope = choice.envelope?.job === job.job ? choice.envelope : null;
  const planned = plan?.plan?.jobs?.find((one: any) => one.job === job.job) ?? null;
  return <Depth job={job} envelope={envelope} plan={planned} fit={choice.recommended.fit} brief={choice.brief === true} />;
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
